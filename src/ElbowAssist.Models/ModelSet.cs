using System.Security.Cryptography;
using System.Text;
using ElbowAssist.Anatomy;
using ElbowAssist.Models.Folders;
using ElbowAssist.Models.Inference;

namespace ElbowAssist.Models;

/// <summary>The models of one installation: one view model and at most one landmark model per view, loaded and checked.</summary>
public sealed class ModelSet : IDisposable
{
    private readonly IReadOnlyDictionary<View, LandmarkModel> landmarks;

    private ModelSet(string sha256, ViewModel view, IReadOnlyDictionary<View, LandmarkModel> landmarks, int threads)
    {
        Sha256 = sha256;
        Threads = threads;
        View = view;
        this.landmarks = landmarks;
    }

    /// <summary>SHA-256 over the manifests and networks in use, as they were when loaded: equal for equal models, wherever they lie.</summary>
    public string Sha256 { get; }

    /// <summary>Looks at one film side by side.</summary>
    public int Threads { get; }

    /// <summary>The view model.</summary>
    public ViewModel View { get; }

    /// <summary>Views with a landmark model.</summary>
    public IEnumerable<View> Views => landmarks.Keys;

    /// <summary>Loads every model needed, so that whatever does not fit is said before any film is read.</summary>
    /// <param name="modelsFolder">Folder with one folder per model.</param>
    /// <param name="preferred">Name of a folder or model that must be taken for its view, or null: the first of each kind by folder name.</param>
    /// <param name="threads">Looks at one film side by side; <see cref="ModelThreads.Interactive"/> if null. No result depends on it.</param>
    /// <exception cref="ModelFolderException">A folder does not fit, the preferred one is missing, or there is no view model.</exception>
    public static ModelSet Load(string modelsFolder, string? preferred = null, int? threads = null) =>
        Load(modelsFolder, Open(modelsFolder, preferred), threads);

    /// <summary>The <see cref="Sha256"/> of the models that <see cref="Load(string, string?, int?)"/> would load, without loading networks.</summary>
    /// <param name="modelsFolder">Folder with one folder per model.</param>
    /// <param name="preferred">Name of a folder or model that must be taken for its view, or null.</param>
    /// <exception cref="ModelFolderException">A folder does not fit, the preferred one is missing, or there is no view model.</exception>
    public static string Sha256Of(string modelsFolder, string? preferred = null)
    {
        var (view, first) = Choose(modelsFolder, Open(modelsFolder, preferred));
        return Sha256Of(view, first);
    }

    /// <summary>Loads a landmark model, or every model of a folder of them, and the view model of another folder where there is none.</summary>
    /// <param name="folder">A model folder of the task <c>landmarks</c>, or a folder with one folder per model.</param>
    /// <param name="installed">Folder whose view model serves where <paramref name="folder"/> has none.</param>
    /// <param name="threads">Looks at one film side by side; <see cref="ModelThreads.Interactive"/> if null. No result depends on it.</param>
    /// <exception cref="ModelFolderException">A folder does not fit, or there is no view or no landmark model.</exception>
    public static ModelSet LoadEither(string folder, string installed, int? threads = null)
    {
        List<ModelFolder> folders = File.Exists(Path.Combine(folder, "model.json")) ? [ModelFolder.Open(folder)] : [.. ModelFolder.Find(folder).Select(ModelFolder.Open)];
        if (!folders.Exists(f => f.Manifest.Task == "landmarks"))
        {
            throw new ModelFolderException(folder, "holds no landmark model.");
        }

        if (!folders.Exists(f => f.Manifest.Task == "view"))
        {
            folders.AddRange(ModelFolder.Find(installed).Select(ModelFolder.Open).Where(f => f.Manifest.Task == "view").Take(1));
        }

        return Load(folder, folders, threads);
    }

    private static List<ModelFolder> Open(string modelsFolder, string? preferred)
    {
        var folders = ModelFolder.Find(modelsFolder).Select(ModelFolder.Open).ToList();
        if (preferred is not null)
        {
            var chosen = folders.Find(f => Path.GetFileName(f.Path) == preferred || f.Manifest.Name == preferred)
                ?? throw new ModelFolderException(modelsFolder, $"holds no model named {preferred}; the models there are {string.Join(", ", folders.Select(f => f.Manifest.Name))}.");
            folders.Remove(chosen);
            folders.Insert(0, chosen);
        }

        return folders;
    }

    private static ModelSet Load(string modelsFolder, List<ModelFolder> folders, int? threads)
    {
        const int threadsOfARun = 1;
        var (view, first) = Choose(modelsFolder, folders);
        var loaded = first.ToDictionary(l => l.Key, l => LandmarkModel.Load(l.Value, threadsOfARun));
        return new ModelSet(Sha256Of(view, first), ViewModel.Load(view, threadsOfARun), loaded, threads ?? ModelThreads.Interactive);
    }

    private static (ModelFolder View, SortedDictionary<View, ModelFolder> Landmarks) Choose(string modelsFolder, List<ModelFolder> folders)
    {
        var view = folders.Find(f => f.Manifest.Task == "view")
            ?? throw new ModelFolderException(modelsFolder, "holds no view model.");
        var first = new SortedDictionary<View, ModelFolder>();
        foreach (var folder in folders.Where(f => f.Manifest.Task == "landmarks"))
        {
            first.TryAdd(ManifestRules.ViewOf(folder.Manifest.Views[0]), folder);
        }

        return (view, first);
    }

    private static string Sha256Of(ModelFolder view, SortedDictionary<View, ModelFolder> landmarkFolders) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.ASCII.GetBytes(string.Join(' ', landmarkFolders.Values.Prepend(view).Select(f => f.Sha256)))));

    /// <summary>The landmark model of a view, or null.</summary>
    public LandmarkModel? LandmarksOf(View view) => landmarks.GetValueOrDefault(view);

    /// <inheritdoc/>
    public void Dispose()
    {
        View.Dispose();
        foreach (var model in landmarks.Values)
        {
            model.Dispose();
        }
    }
}
