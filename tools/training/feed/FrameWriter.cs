using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Phantom.Truth;

namespace ElbowAssist.Feed;

/// <summary>Writes frames: magic, length of the description, description, arrays in the order it lists them.</summary>
internal sealed class FrameWriter(Stream output, int size)
{
    public void Write(FrameBatch batch, byte[] paths, byte[] labels)
    {
        var films = batch.Count;
        var set = batch.View is { } view ? LandmarkSet.Of(view) : null;
        string[] names = set is null ? [] : [.. set.Landmarks.Select(l => l.Name)];
        var header = JsonSerializer.SerializeToUtf8Bytes(new
        {
            films,
            view = Name(batch.View),
            landmarks = names,
            arrays = new[]
            {
                Entry("paths", "float16", films, 5, size, size),
                Entry("labels", "uint8", films, size, size),
                Entry("landmarks", "float32", films, names.Length, 2),
                Entry("tangents", "float32", films, names.Length, 2),
                Entry("visible", "uint8", films, names.Length),
                Entry("locator", "float32", films, 4, 2),
                Entry("viewError", "float32", films),
                Entry("pixelMm", "float32", films),
                Entry("unitW", "float32", films),
                Entry("ageMonths", "float32", films),
                Entry("injured", "uint8", films),
                Entry("seeds", "uint64", films),
            },
        });
        output.Write(Encoding.ASCII.GetBytes("EAFEED01"));
        Span<byte> length = stackalloc byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(length, header.Length);
        output.Write(length);
        output.Write(header);
        output.Write(paths, 0, films * 5 * size * size * 2);
        output.Write(labels, 0, films * size * size);
        var truths = batch.Truths;
        Write<float>([.. truths.SelectMany(t => names.SelectMany((_, k) => Pair(t?.Landmarks[k].Position?.X, t?.Landmarks[k].Position?.Y)))]);
        Write<float>([.. truths.SelectMany(t => names.SelectMany((_, k) => Pair(t?.Landmarks[k].Tangent?.X, t?.Landmarks[k].Tangent?.Y)))]);
        Write<byte>([.. truths.SelectMany(t => names.Select((_, k) => (byte)(t?.Landmarks[k].Visible == true ? 1 : 0)))]);
        Write<float>([.. truths.SelectMany(Locator)]);
        Write<float>([.. truths.Select(t => (float)(t?.ViewErrorDegrees ?? double.NaN))]);
        Write<float>(batch.PixelMm);
        Write<float>([.. truths.Select(t => (float)(t?.UnitWMillimetres ?? double.NaN))]);
        Write<float>([.. truths.Select(t => t?.AgeMonths ?? float.NaN)]);
        Write<byte>([.. truths.Select(t => (byte)(t?.Injuries.Count > 0 ? 1 : 0))]);
        Write<ulong>(batch.Seeds);
        output.Flush();
    }

    private static string Name(View? view) => view switch
    {
        View.Lateral => "lateral",
        View.Ap => "ap",
        View.Oblique => "oblique",
        _ => "near-miss",
    };

    private static object Entry(string name, string dtype, params int[] shape) => new { name, dtype, shape };

    private static IEnumerable<float> Pair(double? x, double? y) => [(float)(x ?? double.NaN), (float)(y ?? double.NaN)];

    private static IEnumerable<float> Locator(FilmTruth? truth) => truth is null
        ? Enumerable.Repeat(float.NaN, 8)
        : new[] { truth.Locator.Shaft, truth.Locator.Joint, truth.Locator.Forearm, truth.Locator.Mark }
            .SelectMany(p => Pair(p.X, p.Y));

    private void Write<T>(T[] values)
        where T : struct => output.Write(MemoryMarshal.AsBytes(values.AsSpan()));
}
