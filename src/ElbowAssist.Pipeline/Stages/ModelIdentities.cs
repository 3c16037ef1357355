using ElbowAssist.Models.Folders;
using ElbowAssist.Reading;

namespace ElbowAssist.Pipeline.Stages;

/// <summary>How a reading names a model.</summary>
internal static class ModelIdentities
{
    public static ModelIdentity Of(ModelFolder folder) =>
        new(folder.Manifest.Name, folder.Manifest.Version, folder.Manifest.Onnx.Sha256);
}
