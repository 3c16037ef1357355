namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>
/// Bits of a coded scan, most significant first. After a byte 0xFF either a stuffed zero byte follows (JPEG, T.81
/// F.1.2.3) or a stuffed zero bit (JPEG-LS, T.87 A.1); anything else there is a marker, at which the bits end.
/// </summary>
internal ref struct JpegBits(ReadOnlySpan<byte> data, bool stuffedBits)
{
    private readonly ReadOnlySpan<byte> data = data;
    private readonly bool stuffedBits = stuffedBits;
    private int position = 0;
    private ulong buffer = 0;
    private int available = 0;
    private bool afterFill = false;

    /// <summary>The next 16 bits without taking them; zeros beyond the end.</summary>
    public int Peek16()
    {
        if (available < 16)
        {
            Fill();
        }

        return available >= 16
            ? (int)(buffer >> (available - 16)) & 0xFFFF
            : (int)(buffer << (16 - available)) & 0xFFFF;
    }

    public void Skip(int count)
    {
        if (count > available)
        {
            throw JpegSegments.Damaged();
        }

        available -= count;
    }

    /// <summary>Takes up to 16 bits.</summary>
    public int Take(int count)
    {
        if (count == 0)
        {
            return 0;
        }

        var value = Peek16() >> (16 - count);
        Skip(count);
        return value;
    }

    /// <summary>Drops the rest of the byte and steps over a restart marker.</summary>
    public void Restart()
    {
        available = 0;
        buffer = 0;
        while (position < data.Length && data[position] == 0xFF && position + 1 < data.Length && data[position + 1] == 0xFF)
        {
            position++;
        }

        if (position + 1 >= data.Length || data[position] != 0xFF || data[position + 1] is < 0xD0 or > 0xD7)
        {
            throw JpegSegments.Damaged();
        }

        position += 2;
    }

    private void Fill()
    {
        while (available <= 48 && position < data.Length)
        {
            var value = data[position];
            if (stuffedBits)
            {
                if (afterFill && value >= 0x80)
                {
                    return;
                }

                var width = afterFill ? 7 : 8;
                buffer = (buffer << width) | value;
                available += width;
                position++;
                afterFill = value == 0xFF;
                continue;
            }

            if (value == 0xFF)
            {
                if (position + 1 >= data.Length || data[position + 1] != 0)
                {
                    return;
                }

                position++;
            }

            buffer = (buffer << 8) | value;
            available += 8;
            position++;
        }
    }
}
