using System.Text;
using ElbowAssist.Phantom.Sampling;

namespace ElbowAssist.Phantom.NotElbow;

/// <summary>A square picture that shows no elbow.</summary>
/// <param name="Seed">The seed that fixes it.</param>
/// <param name="Shows">What it shows, in lower-case words with hyphens: <c>knee</c>, <c>text-page</c>.</param>
/// <param name="Pixels">Grey values row by row, 0 to 65 535.</param>
/// <param name="Size">Pixels along each side.</param>
/// <param name="PixelMm">Distance between pixels in the plane of the bones, millimetres; null for what is no radiograph.</param>
public sealed record OtherPicture(ulong Seed, string Shows, ushort[] Pixels, int Size, double? PixelMm)
{
    private const ulong Stream = 0x5455;

    /// <summary>The same picture turned by one to three quarters as its seed says, mirrored, and dark for bright.</summary>
    public OtherPicture TurnedMirroredInverted()
    {
        var quarters = 1 + (int)(new CounterRandom(Seed, Stream).Uniform() * 3);
        var turned = new ushort[Pixels.Length];
        for (var y = 0; y < Size; y++)
        {
            for (var x = 0; x < Size; x++)
            {
                // Mirrored first, then turned clockwise.
                int fromX = Size - 1 - x, fromY = y, toX = x, toY = y;
                for (var i = 0; i < quarters; i++)
                {
                    (toX, toY) = (Size - 1 - toY, toX);
                }

                turned[(toY * Size) + toX] = (ushort)(ushort.MaxValue - Pixels[(fromY * Size) + fromX]);
            }
        }

        return this with { Pixels = turned };
    }

    /// <summary>The name of a kind in lower-case words with hyphens.</summary>
    internal static string Words<TKind>(TKind kind)
        where TKind : struct, Enum
    {
        var words = new StringBuilder();
        foreach (var letter in kind.ToString())
        {
            words.Append(char.IsUpper(letter) && words.Length > 0 ? "-" : "").Append(char.ToLowerInvariant(letter));
        }

        return words.ToString();
    }
}
