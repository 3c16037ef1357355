using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;

namespace ElbowAssist.Models.Folders;

/// <summary>What a manifest must say beyond having its fields.</summary>
internal static class ManifestRules
{
    private static readonly string[] ViewNames = ["lateral", "ap", "oblique"];

    public static void Check(string folder, ModelManifest manifest)
    {
        if (manifest.Schema != ModelManifest.SchemaId)
        {
            throw new ModelFolderException(folder, $"has a model.json of schema {manifest.Schema}, but {ModelManifest.SchemaId} is needed.");
        }

        if (Path.GetFileName(manifest.Onnx.File) != manifest.Onnx.File || manifest.Onnx.File.Length == 0)
        {
            throw new ModelFolderException(folder, "names an ONNX file outside itself.");
        }

        CheckInput(folder, manifest.Input);
        if (manifest.Views.Count == 0 || manifest.Views.FirstOrDefault(v => !ViewNames.Contains(v)) is not null)
        {
            throw new ModelFolderException(folder, "names no view, or one other than lateral, ap and oblique.");
        }

        switch (manifest.Task)
        {
            case "landmarks":
                CheckLandmarks(folder, manifest);
                break;
            case "view":
                CheckView(folder, manifest.Outputs);
                break;
            default:
                throw new ModelFolderException(folder, $"has the task {manifest.Task}; landmarks and view are known.");
        }
    }

    /// <summary>The view a landmark model serves.</summary>
    public static View ViewOf(string name) => name switch
    {
        "lateral" => View.Lateral,
        "ap" => View.Ap,
        "oblique" => View.Oblique,
        _ => View.Unknown,
    };

    private static void CheckInput(string folder, ModelInput input)
    {
        if (input.Channels != 1 || input.Width is < 16 or > 4096 || input.Height != input.Width)
        {
            throw new ModelFolderException(folder, "takes an input other than one square grey film of 16 to 4096 pixels.");
        }

        if (input.Normalisation is not { Recipe: "standardised-crop", Version: 1 })
        {
            throw new ModelFolderException(folder, $"needs the normalisation {input.Normalisation.Recipe}, but only version 1 of standardised-crop is known.");
        }
    }

    private static void CheckLandmarks(string folder, ModelManifest manifest)
    {
        if (manifest.Outputs.Heatmaps is null == manifest.Outputs.Points is null)
        {
            throw new ModelFolderException(folder, "must give either heatmaps or points.");
        }

        if (manifest.Outputs.Heatmaps is { Stride: < 1 })
        {
            throw new ModelFolderException(folder, "gives heatmaps with an impossible stride.");
        }

        if (manifest.Views.Count != 1 || LandmarkSet.Of(ViewOf(manifest.Views[0])) is not { } set)
        {
            throw new ModelFolderException(folder, "must serve one view that has landmarks, lateral or ap.");
        }

        var names = manifest.Landmarks.Select(l => l.Name).ToHashSet(StringComparer.Ordinal);
        if (names.Count != manifest.Landmarks.Count)
        {
            throw new ModelFolderException(folder, "names a landmark twice.");
        }

        if (names.Concat(manifest.Absent).FirstOrDefault(n => set.IndexOf(n) < 0) is { } unknown)
        {
            throw new ModelFolderException(folder, $"names the landmark {unknown}, which the {manifest.Views[0]} view does not have.");
        }

        if (set.Landmarks.FirstOrDefault(l => !names.Contains(l.Name) && !manifest.Absent.Contains(l.Name)) is { } missing)
        {
            throw new ModelFolderException(folder, $"lacks the landmark {missing.Name}; list it under absent if the model does not propose it.");
        }

        if (manifest.Landmarks.FirstOrDefault(l => !names.Contains(l.Mirror)) is { } odd)
        {
            throw new ModelFolderException(folder, $"mirrors {odd.Name} to {odd.Mirror}, which it does not have.");
        }
    }

    private static void CheckView(string folder, ModelOutputs outputs)
    {
        if (outputs.View is null || outputs.Locator is null)
        {
            throw new ModelFolderException(folder, "must give view and locator.");
        }

        if (ViewClasses.All.FirstOrDefault(c => !outputs.View.Classes.Contains(c)) is not null ||
            outputs.View.Classes.Count != ViewClasses.All.Count)
        {
            throw new ModelFolderException(folder, $"must have the view classes {string.Join(", ", ViewClasses.All)}.");
        }

        if (outputs.Locator.Stride < 1 || LocatorPoints.Names.Any(n => !outputs.Locator.Points.Contains(n)))
        {
            throw new ModelFolderException(folder, $"must have the locator points {string.Join(", ", LocatorPoints.Names)}.");
        }
    }
}
