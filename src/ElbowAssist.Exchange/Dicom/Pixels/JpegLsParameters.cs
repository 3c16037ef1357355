namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Coding parameters of a lossless scan, given or by default (T.87 C.2.4.1.1).</summary>
internal sealed record JpegLsParameters(int MaxValue, int Threshold1, int Threshold2, int Threshold3, int Reset)
{
    public int Range => MaxValue + 1;

    /// <summary>Bits of a value in the range.</summary>
    public int RangeBits => int.Log2(MaxValue) + 1;

    /// <summary>Longest code word.</summary>
    public int Limit => 2 * (Math.Max(2, RangeBits) + Math.Max(8, RangeBits));

    /// <summary>Parameters of a precision, where <paramref name="preset"/> (MAXVAL, T1, T2, T3, RESET) holds 0 for "default".</summary>
    public static JpegLsParameters Of(int precision, IReadOnlyList<int> preset)
    {
        var max = preset[0] == 0 ? (1 << precision) - 1 : preset[0];
        var (d1, d2, d3) = max >= 128
            ? Wide((Math.Min(max, 4095) + 128) / 256)
            : Narrow(256 / (max + 1));
        var t1 = preset[1] == 0 ? Clamp(d1, 1, max) : preset[1];
        var t2 = preset[2] == 0 ? Clamp(d2, t1, max) : preset[2];
        var t3 = preset[3] == 0 ? Clamp(d3, t2, max) : preset[3];
        var reset = preset[4] == 0 ? 64 : preset[4];
        return max < 1 || max >= 1 << precision || t1 < 1 || t2 < t1 || t3 < t2 || t3 > max || reset < 3
            ? throw JpegSegments.Damaged()
            : new(max, t1, t2, t3, reset);
    }

    private static (int T1, int T2, int T3) Wide(int factor) => (factor + 2, (factor * 4) + 3, (factor * 17) + 4);

    private static (int T1, int T2, int T3) Narrow(int factor) =>
        (Math.Max(2, 3 / factor), Math.Max(3, 7 / factor), Math.Max(4, 21 / factor));

    private static int Clamp(int value, int low, int max) => value > max || value < low ? low : value;
}
