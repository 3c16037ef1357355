using ElbowAssist.Phantom.Rendering;

namespace ElbowAssist.Phantom.NearMiss.Rendering;

/// <summary>Renders near-miss scenes on the CPU.</summary>
internal static class NearMissRenderer
{
    /// <summary>Path image of a scene; no labels, because nothing on it belongs to an elbow.</summary>
    public static PathImage Render(NearMissModel model, int width, int height)
    {
        var image = new PathImage(width, height);
        Parallel.For(0, height, y => Row(model, image, y));
        return image;
    }

    private static void Row(NearMissModel model, PathImage image, int y)
    {
        var scene = model.Scene;
        var store = new ArrayStore(model);
        for (var x = 0; x < image.Width; x++)
        {
            var paths = NearMissIntegrator.Trace(in scene, store, x + 0.5f, y + 0.5f);
            var i = (y * image.Width) + x;
            image.Soft[i] = paths.Soft;
            image.Fat[i] = paths.Fat;
            image.Bone[i] = paths.Bone;
            image.Metal[i] = paths.Metal;
            image.Cast[i] = paths.Cast;
        }
    }

    private readonly struct ArrayStore(NearMissModel model) : INearMissStore
    {
        private readonly NearMissPart[] parts = model.Parts;
        private readonly NearMissSolid[] solids = model.Solids;

        public NearMissPart Part(int index) => parts[index];

        public NearMissSolid Solid(int index) => solids[index];
    }
}

/// <summary>A near-miss scene with its solids and parts.</summary>
/// <param name="Scene">Header.</param>
/// <param name="Solids">Bones, metal and air spaces.</param>
/// <param name="Parts">Parts of all solids and of the skin.</param>
internal sealed record NearMissModel(NearMissScene Scene, NearMissSolid[] Solids, NearMissPart[] Parts);
