namespace ElbowAssist.Exchange.Tests.Dicom.Support;

/// <summary>Damage to files: what transfers, disks and hostile people do.</summary>
internal static class Mutation
{
    private static readonly byte[] Extremes = [0x00, 0x01, 0x7F, 0x80, 0xFE, 0xFF];

    /// <summary>One to six changes, most of them in the first kilobytes, where the headers are.</summary>
    public static byte[] Of(byte[] file, Random random)
    {
        var bytes = file.ToList();
        for (var changes = random.Next(1, 7); changes > 0 && bytes.Count > 8; changes--)
        {
            var at = random.Next(3) > 0 ? random.Next(Math.Min(bytes.Count, 3000)) : random.Next(bytes.Count);
            switch (random.Next(7))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes[at] = Extremes[random.Next(Extremes.Length)];
                    break;
                case 2:
                    // A length of all ones means "undefined" where four bytes hold it.
                    for (var i = at; i < Math.Min(at + 4, bytes.Count); i++)
                    {
                        bytes[i] = 0xFF;
                    }

                    break;
                case 3:
                    bytes.RemoveRange(at, Math.Min(random.Next(1, 64), bytes.Count - at));
                    break;
                case 4:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 256), bytes.Count - at)));
                    break;
                case 5:
                    bytes.RemoveRange(Math.Max(at, 8), bytes.Count - Math.Max(at, 8));
                    break;
                default:
                    bytes[at] = (byte)random.Next(256);
                    break;
            }
        }

        return [.. bytes];
    }
}
