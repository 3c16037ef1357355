namespace ElbowAssist.Exchange.Dicom.Pixels;

/// <summary>Decodes one lossless JPEG-LS scan; names and steps follow T.87 annex A.</summary>
internal sealed class JpegLsScan
{
    private const int RegularContexts = 365;

    private static readonly int[] RunOrder =
        [0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 2, 2, 3, 3, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 9, 10, 11, 12, 13, 14, 15];

    private readonly JpegLsParameters parameters;
    private readonly int range;
    private readonly int limit;
    private readonly int rangeBits;

    // Per context: accumulated magnitude, bias, correction and count; two more contexts serve run interruptions.
    private readonly int[] a = new int[RegularContexts + 2];
    private readonly int[] b = new int[RegularContexts];
    private readonly int[] c = new int[RegularContexts];
    private readonly int[] n = new int[RegularContexts + 2];
    private readonly int[] negatives = new int[2];
    private int runIndex;

    public JpegLsScan(JpegLsParameters parameters)
    {
        this.parameters = parameters;
        (range, limit, rangeBits) = (parameters.Range, parameters.Limit, parameters.RangeBits);
        Array.Fill(a, Math.Max(2, (range + 32) / 64));
        Array.Fill(n, 1);
    }

    public ushort[] Decode(JpegBits bits, int width, int height)
    {
        var values = new ushort[width * height];

        // One column of padding on either side holds the neighbours that T.87 A.2.1 substitutes at the edges.
        var above = new int[width + 2];
        var row = new int[width + 2];
        for (var y = 0; y < height; y++)
        {
            above[width + 1] = above[width];
            row[0] = above[1];
            DecodeRow(ref bits, row, above, width);
            for (var x = 0; x < width; x++)
            {
                values[(y * width) + x] = (ushort)row[x + 1];
            }

            (above, row) = (row, above);
        }

        return values;
    }

    private void DecodeRow(ref JpegBits bits, int[] row, int[] above, int width)
    {
        for (var x = 1; x <= width;)
        {
            var (left, up, upLeft, upRight) = (row[x - 1], above[x], above[x - 1], above[x + 1]);
            var context = (81 * Quantise(upRight - up)) + (9 * Quantise(up - upLeft)) + Quantise(upLeft - left);
            if (context == 0)
            {
                x = DecodeRun(ref bits, row, above, x, width);
            }
            else
            {
                row[x++] = DecodeRegular(ref bits, context, left, up, upLeft);
            }
        }
    }

    private int DecodeRegular(ref JpegBits bits, int context, int left, int up, int upLeft)
    {
        var sign = context < 0 ? -1 : 1;
        var q = context * sign;
        var predicted = upLeft >= Math.Max(left, up) ? Math.Min(left, up)
            : upLeft <= Math.Min(left, up) ? Math.Max(left, up)
            : left + up - upLeft;
        predicted = Math.Clamp(predicted + (sign * c[q]), 0, parameters.MaxValue);
        var k = GolombOrder(a[q], n[q]);
        var mapped = ReadGolomb(ref bits, k, limit);
        var error = k == 0 && 2 * b[q] <= -n[q]
            ? (mapped & 1) != 0 ? (mapped - 1) / 2 : -(mapped / 2) - 1
            : (mapped & 1) == 0 ? mapped / 2 : -((mapped + 1) / 2);
        UpdateRegular(q, error);
        return Wrap(predicted + (sign * error));
    }

    private void UpdateRegular(int q, int error)
    {
        b[q] += error;
        a[q] += Math.Abs(error);
        if (n[q] == parameters.Reset)
        {
            a[q] >>= 1;
            b[q] >>= 1;
            n[q] >>= 1;
        }

        n[q]++;
        if (b[q] <= -n[q])
        {
            b[q] = Math.Max(b[q] + n[q], 1 - n[q]);
            c[q] = Math.Max(c[q] - 1, -128);
        }
        else if (b[q] > 0)
        {
            b[q] = Math.Min(b[q] - n[q], 0);
            c[q] = Math.Min(c[q] + 1, 127);
        }
    }

    private int DecodeRun(ref JpegBits bits, int[] row, int[] above, int x, int width)
    {
        var run = row[x - 1];
        while (bits.Take(1) == 1)
        {
            var full = 1 << RunOrder[runIndex];
            var length = Math.Min(full, width + 1 - x);
            row.AsSpan(x, length).Fill(run);
            x += length;
            if (length == full)
            {
                runIndex = Math.Min(runIndex + 1, 31);
            }

            if (x > width)
            {
                return x;
            }
        }

        var rest = bits.Take(RunOrder[runIndex]);
        if (rest > width - x)
        {
            throw JpegSegments.Damaged();
        }

        row.AsSpan(x, rest).Fill(run);
        x += rest;
        row[x] = DecodeInterruption(ref bits, run, above[x]);
        runIndex = Math.Max(runIndex - 1, 0);
        return x + 1;
    }

    private int DecodeInterruption(ref JpegBits bits, int left, int up)
    {
        var type = left == up ? 1 : 0;
        var sign = type == 0 && left > up ? -1 : 1;
        var q = RegularContexts + type;
        var k = GolombOrder(a[q] + (type == 1 ? n[q] >> 1 : 0), n[q]);
        var mapped = ReadGolomb(ref bits, k, limit - RunOrder[runIndex] - 1);
        var odd = (mapped + type) & 1;
        var magnitude = (mapped + type + odd) / 2;
        var isNegative = (k != 0 || 2 * negatives[type] >= n[q] ? 1 : 0) == odd;
        var error = isNegative ? -magnitude : magnitude;
        if (error < 0)
        {
            negatives[type]++;
        }

        a[q] += (mapped + 1 - type) >> 1;
        if (n[q] == parameters.Reset)
        {
            a[q] >>= 1;
            n[q] >>= 1;
            negatives[type] >>= 1;
        }

        n[q]++;
        return Wrap((type == 1 ? left : up) + (sign * error));
    }

    private int ReadGolomb(ref JpegBits bits, int k, int longest)
    {
        var zeros = 0;
        while (bits.Take(1) == 0)
        {
            if (++zeros > longest)
            {
                throw JpegSegments.Damaged();
            }
        }

        return zeros < longest - rangeBits - 1
            ? (zeros << k) + bits.Take(k)
            : bits.Take(rangeBits) + 1;
    }

    private static int GolombOrder(int magnitude, int count)
    {
        var k = 0;
        while (count << k < magnitude && k < 16)
        {
            k++;
        }

        return k;
    }

    private int Quantise(int gradient)
    {
        var size = Math.Abs(gradient);
        var level = size == 0 ? 0
            : size < parameters.Threshold1 ? 1
            : size < parameters.Threshold2 ? 2
            : size < parameters.Threshold3 ? 3
            : 4;
        return gradient < 0 ? -level : level;
    }

    private int Wrap(int value)
    {
        var wrapped = value < 0 ? value + range : value > parameters.MaxValue ? value - range : value;
        return Math.Clamp(wrapped, 0, parameters.MaxValue);
    }
}
