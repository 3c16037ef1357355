using System.Text.Json;
using ElbowAssist.Anatomy;
using ElbowAssist.Geometry;
using ElbowAssist.Phantom.Mesh.Registration;
using ElbowAssist.Phantom.Mesh.Surfaces;
using ElbowAssist.Phantom.Rendering.Field;

namespace ElbowAssist.Phantom.Mesh;

/// <summary>
/// A folder of bones: <c>humerus.stl</c>, <c>ulna.stl</c> and <c>radius.stl</c>, closed surfaces of one adult elbow about as
/// they lie in the body, all in one frame, and <c>bones.json</c> with the schema <c>elbowassist/bones/1</c>, the
/// <c>unit</c> of the files (<c>mm</c>, <c>cm</c> or <c>m</c>; STL has none) and the <c>side</c> (<c>left</c> or
/// <c>right</c>).
/// </summary>
public static class BoneFolder
{
    /// <summary>Name of the manifest.</summary>
    public const string ManifestFile = "bones.json";

    /// <summary>Value of <c>schema</c> in the manifest.</summary>
    public const string Schema = "elbowassist/bones/1";

    /// <summary>Reads and registers the bones; takes some seconds.</summary>
    /// <param name="folder">Folder.</param>
    /// <exception cref="InvalidDataException">A file is missing or not what it should be; one sentence that says which and why.</exception>
    /// <exception cref="IOException">A file cannot be read.</exception>
    public static MeshElbow Load(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        var (scale, side) = Manifest(folder);
        TriangleMesh Bone(string name, double least, double most)
        {
            var mesh = StlReader.Read(Content(folder, name), name).Moved(p => p * scale);
            mesh = side == Side.Left ? mesh.Mirrored() : mesh;
            var length = Extent(mesh);
            return length >= least && length <= most ? mesh : throw new InvalidDataException(FormattableString.Invariant(
                $"{name} is {length:0.#} mm long, but this adult bone should measure {least} to {most} mm: check \"unit\" in {ManifestFile} and that the file holds the right bone."));
        }

        return MeshElbow.Of(new AssembledBones(Bone("humerus.stl", 120, 450), Bone("ulna.stl", 130, 400), Bone("radius.stl", 90, 380)));
    }

    private static (float Scale, Side Side) Manifest(string folder)
    {
        try
        {
            using var manifest = JsonDocument.Parse(Content(folder, ManifestFile));
            string? Text(string name) =>
                manifest.RootElement.ValueKind == JsonValueKind.Object && manifest.RootElement.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String
                    ? value.GetString()
                    : null;
            if (Text("schema") != Schema)
            {
                throw new InvalidDataException($"{ManifestFile} needs \"schema\": \"{Schema}\".");
            }

            var scale = Text("unit") switch
            {
                "mm" => 1f,
                "cm" => 10f,
                "m" => 1000f,
                _ => throw new InvalidDataException($"{ManifestFile} needs \"unit\": \"mm\", \"cm\" or \"m\", the unit of the STL files."),
            };
            return (scale, Text("side") switch
            {
                "left" => Side.Left,
                "right" => Side.Right,
                _ => throw new InvalidDataException($"{ManifestFile} needs \"side\": \"left\" or \"right\", the side of the bones in the STL files."),
            });
        }
        catch (JsonException e)
        {
            throw new InvalidDataException(FormattableString.Invariant(
                $"{ManifestFile} is no JSON: it cannot be read beyond line {(e.LineNumber ?? 0) + 1}."), e);
        }
        catch (InvalidOperationException e)
        {
            throw new InvalidDataException($"{ManifestFile} holds text that is not UTF-8; save it as UTF-8.", e);
        }
    }

    private static byte[] Content(string folder, string name)
    {
        var file = new FileInfo(Path.Combine(folder, name));
        if (!file.Exists)
        {
            throw new InvalidDataException($"{folder} has no file {name}: a folder of bones holds humerus.stl, ulna.stl, radius.stl and {ManifestFile}.");
        }

        return file.Length <= InputLimits.SurfaceBytes ? File.ReadAllBytes(file.FullName) : throw new InvalidDataException($"{name} is larger than 200 MB.");
    }

    /// <summary>Longest edge of the box about a bone: a little less than its length if it lies askew.</summary>
    private static double Extent(TriangleMesh mesh)
    {
        static float Span(IEnumerable<float> values) => values.Max() - values.Min();
        Vec3 size = new(Span(mesh.Vertices.Select(p => p.X)), Span(mesh.Vertices.Select(p => p.Y)), Span(mesh.Vertices.Select(p => p.Z)));
        return Math.Max(size.X, Math.Max(size.Y, size.Z));
    }
}
