using ElbowAssist.Batch.Queue;
using ElbowAssist.Exchange.Dicom.Web;
using ElbowAssist.Exchange.Json.Facts;

namespace ElbowAssist.Cli.Batches;

/// <summary>What <c>batch</c> was asked to do.</summary>
/// <param name="Source">Folder, COCO file, or address of a DICOMweb service.</param>
/// <param name="Query">Which films of an archive.</param>
/// <param name="Output">File for the results.</param>
/// <param name="Options">Facts given as options; they hold for every film.</param>
/// <param name="Model">Name of a model folder, or null for the default.</param>
/// <param name="Threads">Films read at the same time in this process.</param>
/// <param name="Queue">Where workers read the films, or null to read them in this process.</param>
internal sealed record BatchRequest(string Source, FilmQuery Query, string Output, FilmFacts Options, string? Model, int Threads, QueueOptions? Queue);
