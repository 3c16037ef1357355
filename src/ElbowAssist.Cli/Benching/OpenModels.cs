using System.Security.Cryptography;
using ElbowAssist.Anatomy;
using ElbowAssist.Models;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;
using ElbowAssist.Pipeline;

namespace ElbowAssist.Cli.Benching;

/// <summary>Models that take part in a bench under one name, loaded and checked.</summary>
internal sealed class OpenModels : IDisposable
{
    /// <summary>Name of the installed models taken together.</summary>
    public const string Installed = "installed";

    private readonly ModelSet models;

    private OpenModels(string name, ModelSet models)
    {
        (Name, this.models) = (name, models);
        Reader = new FilmReader(models, ThisTool.Identity, limits: LimitsFile.Read());
    }

    public string Name { get; }

    public FilmReader Reader { get; }

    public IReadOnlyList<View> Views => [.. models.Views.Order()];

    /// <summary>Folders of the view model and of the landmark models.</summary>
    public IReadOnlyList<ModelFolder> Folders => [ViewModel, .. Views.Select(LandmarkModel)];

    public ModelFolder ViewModel => models.View.Folder;

    /// <summary>Name, version and hashes of every model.</summary>
    public string Identity => string.Join("; ", Folders
        .Select(f => $"{f.Manifest.Name} {f.Manifest.Version} onnx {f.Manifest.Onnx.Sha256} manifest {Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(f.Path, "model.json"))))}"));

    /// <summary>Opens models that are named as a folder or by the name of an installed model.</summary>
    /// <exception cref="UserErrorException">There is no such model, or it does not fit.</exception>
    public static OpenModels Open(string named)
    {
        try
        {
            return Directory.Exists(named)
                ? new OpenModels(Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(named))), ModelSet.LoadEither(named, ModelsFolder.Path, ModelThreads.Batch))
                : new OpenModels(named, ModelSet.LoadEither(named == Installed ? ModelsFolder.Path : InstalledFolder(named), ModelsFolder.Path, ModelThreads.Batch));
        }
        catch (ModelFolderException e)
        {
            throw new UserErrorException(e.Message);
        }
    }

    /// <summary>The landmark model of one of <see cref="Views"/>.</summary>
    public ModelFolder LandmarkModel(View view) => models.LandmarksOf(view)!.Folder;

    public void Dispose() => models.Dispose();

    private static string InstalledFolder(string name) =>
        ModelFolder.Find(ModelsFolder.Path).FirstOrDefault(f => Path.GetFileName(f) == name || ModelFolder.Open(f).Manifest.Name == name)
        ?? throw new UserErrorException($"{name} is neither a folder nor an installed model; see: elbowassist models list");
}
