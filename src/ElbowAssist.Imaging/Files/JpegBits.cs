namespace ElbowAssist.Imaging.Files;

/// <summary>The bits of an entropy-coded JPEG segment, stuffed bytes removed (ITU-T T.81, F.2.2.5).</summary>
internal ref struct JpegBits(ReadOnlySpan<byte> scan)
{
    private readonly ReadOnlySpan<byte> scan = scan;
    private int at;
    private ulong buffer;
    private int available;

    /// <summary>True once more bits were taken than the segment holds.</summary>
    public bool Exhausted { get; private set; }

    /// <summary>Decodes one symbol.</summary>
    /// <returns>−1 if the bits begin no code or the segment has ended.</returns>
    public int Symbol(HuffmanTable table)
    {
        Fill();
        var entry = table.LookUp((int)(buffer >> 48));
        Skip(entry >> 8);
        return entry == 0 || Exhausted ? -1 : entry & 0xFF;
    }

    /// <summary>Takes up to 16 bits.</summary>
    public int Take(int count)
    {
        Fill();
        var value = count == 0 ? 0 : (int)(buffer >> (64 - count));
        Skip(count);
        return value;
    }

    /// <summary>Goes on behind the next restart marker.</summary>
    /// <returns>False if the segment does not stop at one here.</returns>
    public bool Restart()
    {
        buffer = 0;
        available = 0;
        if (at + 1 >= scan.Length || scan[at] != 0xFF || scan[at + 1] is < 0xD0 or > 0xD7)
        {
            return false;
        }

        at += 2;
        return true;
    }

    private void Skip(int count)
    {
        Exhausted |= count > available;
        buffer <<= count;
        available -= Math.Min(count, available);
    }

    private void Fill()
    {
        while (available <= 48 && at < scan.Length)
        {
            var value = scan[at];
            if (value == 0xFF)
            {
                if (at + 1 >= scan.Length || scan[at + 1] != 0)
                {
                    return;
                }

                at++;
            }

            at++;
            buffer |= (ulong)value << (56 - available);
            available += 8;
        }
    }
}
