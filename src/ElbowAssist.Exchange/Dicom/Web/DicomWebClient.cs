using System.Globalization;
using System.Net;
using System.Text.Json;
using ElbowAssist.Exchange.Dicom.Format;

namespace ElbowAssist.Exchange.Dicom.Web;

/// <summary>
/// A DICOMweb client (PS3.18): finds elbow films, fetches them and stores reports and presentation states. Answers that
/// may safely be asked for again are asked for again; an object is never stored twice.
/// </summary>
public sealed class DicomWebClient
{
    private static readonly string[] Modalities = ["DX", "CR"];

    private static readonly HashSet<string> FittingBodyParts =
        new(["ELBOW", "EXTREMITY", "ARM", "FOREARM", "HUMERUS", "UP_EXM"], StringComparer.OrdinalIgnoreCase);

    private readonly DicomWebConnection connection;

    /// <summary>A client of one archive.</summary>
    /// <param name="http">Carries the requests, with whatever authentication the archive wants.</param>
    /// <param name="root">Address of the DICOMweb service, e.g. http://localhost:8042/dicom-web.</param>
    /// <param name="limits">Largest answer; null for the default.</param>
    /// <param name="time">Clock for the waits between tries; null for the system's.</param>
    public DicomWebClient(HttpClient http, Uri root, DicomLimits? limits = null, TimeProvider? time = null) =>
        connection = new(http, root, limits ?? DicomLimits.Default, time ?? TimeProvider.System);

    /// <summary>Films of the elbow, and of no stated body part, by study, series and instance.</summary>
    /// <exception cref="DicomWebException">The archive cannot be reached or does not answer as it should.</exception>
    public async Task<IReadOnlyList<FilmReference>> FindFilmsAsync(FilmQuery query, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        var films = new List<FilmReference>();
        foreach (var (study, series) in await FittingSeriesAsync(query, cancellation).ConfigureAwait(false))
        {
            if (DicomJson.Text(series, Tag.SeriesInstanceUid) is { } uid && Uids.IsValid(uid))
            {
                films.AddRange(await InstancesAsync(study, uid, DicomJson.Text(series, Tag.BodyPartExamined), cancellation).ConfigureAwait(false));
            }
        }

        return [.. films.DistinctBy(f => f.SopInstanceUid).OrderBy(f => f.SopInstanceUid, StringComparer.Ordinal)];
    }

    /// <summary>Studies with films of the elbow, or of no stated body part, the latest first.</summary>
    /// <exception cref="DicomWebException">The archive cannot be reached or does not answer as it should.</exception>
    public async Task<IReadOnlyList<StudyReference>> FindStudiesAsync(FilmQuery query, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(query);
        var found = await FittingSeriesAsync(query, cancellation).ConfigureAwait(false);
        return
        [
            .. found.DistinctBy(f => f.Study, StringComparer.Ordinal)
                .Select(f => new StudyReference(
                    f.Study,
                    DateOnly.TryParseExact(DicomJson.Text(f.Series, Tag.StudyDate), "yyyyMMdd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null,
                    TimeOf(DicomJson.Text(f.Series, Tag.StudyTime)),
                    Known(DicomJson.Text(f.Series, Tag.AccessionNumber)),
                    Known(DicomJson.Text(f.Series, Tag.StudyDescription))))
                .OrderByDescending(s => s.Date).ThenByDescending(s => s.Time),
        ];
    }

    /// <summary>The DICOM file of a film as the archive keeps it.</summary>
    /// <exception cref="DicomWebException">The archive cannot be reached or does not answer as it should.</exception>
    public async Task<byte[]> FetchAsync(FilmReference film, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(film);
        var (body, type) = await connection.GetAsync(
            $"studies/{film.StudyInstanceUid}/series/{film.SeriesInstanceUid}/instances/{film.SopInstanceUid}",
            "multipart/related; type=\"application/dicom\"; transfer-syntax=*", cancellation).ConfigureAwait(false);
        return MultipartRelated.FirstPart(type, body);
    }

    /// <summary>
    /// Stores objects one by one, so that each has its own outcome. What the archive already holds is not sent; after a
    /// broken connection the archive is asked what it holds before anything is sent again.
    /// </summary>
    /// <param name="files">DICOM files.</param>
    /// <param name="cancellation">Stops between objects.</param>
    public async Task<IReadOnlyList<StoreOutcome>> StoreAsync(IEnumerable<ReadOnlyMemory<byte>> files, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(files);
        var outcomes = new List<StoreOutcome>();
        foreach (var file in files)
        {
            var dataset = DicomFile.Parse(file, DicomLimits.Default).Dataset;
            var (study, instance) = (dataset.Text(Tag.StudyInstanceUid) ?? "", dataset.Text(Tag.SopInstanceUid) ?? "");
            outcomes.Add(await StoreOneAsync(study, instance, file, cancellation).ConfigureAwait(false));
        }

        return outcomes;
    }

    private async Task<IReadOnlyList<(string Study, JsonElement Series)>> FittingSeriesAsync(FilmQuery query, CancellationToken cancellation)
    {
        var fitting = new List<(string, JsonElement)>();
        foreach (var modality in Modalities)
        {
            foreach (var series in await QueryAsync(SeriesPath(query, modality), cancellation).ConfigureAwait(false))
            {
                var bodyPart = DicomJson.Text(series, Tag.BodyPartExamined);
                if ((bodyPart is null || FittingBodyParts.Contains(bodyPart.Trim())) &&
                    (DicomJson.Text(series, Tag.StudyInstanceUid) ?? query.StudyInstanceUid) is { } study && Uids.IsValid(study))
                {
                    fitting.Add((study, series));
                }
            }
        }

        return fitting;
    }

    private async Task<StoreOutcome> StoreOneAsync(string study, string instance, ReadOnlyMemory<byte> file, CancellationToken cancellation)
    {
        const int Tries = 2;
        try
        {
            if (await HoldsAsync(study, instance, cancellation).ConfigureAwait(false))
            {
                return new(instance, StoreState.AlreadyThere, null);
            }

            for (var attempt = 1; attempt <= Tries; attempt++)
            {
                using var body = MultipartRelated.Of(file);
                var (status, answer) = await connection.PostOnceAsync($"studies/{study}", body, cancellation).ConfigureAwait(false);
                if (status is { } known && (int)known < 500)
                {
                    return Outcome(instance, known, answer);
                }

                if (await HoldsAsync(study, instance, cancellation).ConfigureAwait(false))
                {
                    return new(instance, StoreState.Stored, null);
                }
            }

            return new(instance, StoreState.Failed, "The archive broke off twice while the object was sent; try again later.");
        }
        catch (DicomWebException e)
        {
            return new(instance, StoreState.Failed, e.Message);
        }
    }

    /// <summary>Some archives answer 400 though one object of several was stored: the list of stored objects decides.</summary>
    private static StoreOutcome Outcome(string instance, HttpStatusCode status, byte[] answer)
    {
        var result = answer.Length > 0 && answer[0] is (byte)'{' or (byte)'[' ? DicomJson.Objects(answer) : [];
        if (result.SelectMany(r => DicomJson.Items(r, Tag.ReferencedSopSequence)).Any(i => DicomJson.Text(i, Tag.ReferencedSopInstanceUid) == instance))
        {
            return new(instance, StoreState.Stored, null);
        }

        var reason = result.SelectMany(r => DicomJson.Items(r, Tag.FailedSopSequence)).Select(i => DicomJson.Text(i, Tag.FailureReason)).FirstOrDefault();
        return new(instance, StoreState.Failed, reason is null
            ? FormattableString.Invariant($"The archive did not store the object (HTTP status {(int)status}).")
            : FormattableString.Invariant($"The archive did not store the object (HTTP status {(int)status}, failure reason {reason})."));
    }

    private async Task<bool> HoldsAsync(string study, string instance, CancellationToken cancellation) =>
        (await QueryAsync($"studies/{study}/instances?SOPInstanceUID={instance}", cancellation).ConfigureAwait(false))
            .Any(i => DicomJson.Text(i, Tag.SopInstanceUid) == instance);

    private async Task<IEnumerable<FilmReference>> InstancesAsync(string study, string series, string? bodyPart, CancellationToken cancellation) =>
        (await QueryAsync($"studies/{study}/series/{series}/instances", cancellation).ConfigureAwait(false))
            .Select(i => (Class: DicomJson.Text(i, Tag.SopClassUid), Instance: DicomJson.Text(i, Tag.SopInstanceUid)))
            .Where(i => i.Class is Uids.ComputedRadiography or Uids.DigitalXRayForPresentation && Uids.IsValid(i.Instance))
            .Select(i => new FilmReference(study, series, i.Class!, i.Instance!, bodyPart));

    private async Task<IReadOnlyList<JsonElement>> QueryAsync(string path, CancellationToken cancellation)
    {
        try
        {
            return DicomJson.Objects((await connection.GetAsync(path, "application/dicom+json", cancellation).ConfigureAwait(false)).Body);
        }
        catch (DicomWebException e) when (e.Status == HttpStatusCode.NotFound)
        {
            return []; // some archives answer 404 instead of nothing found
        }
    }

    private static string SeriesPath(FilmQuery query, string modality)
    {
        var dates = query.From is null && query.To is null ? "" : $"&StudyDate={Date(query.From)}-{Date(query.To)}";
        var accession = query.AccessionNumber is { Length: > 0 } number ? $"&AccessionNumber={Uri.EscapeDataString(number)}" : "";
        var filter = $"Modality={modality}&includefield=BodyPartExamined,StudyDate,StudyTime,AccessionNumber,StudyDescription{dates}{accession}";
        return query.StudyInstanceUid is { } study ? $"studies/{study}/series?{filter}" : $"series?{filter}";
    }

    private static string? Known(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();

    // HHMMSS.ffffff, of which the archive may give less.
    private static TimeOnly? TimeOf(string? text) =>
        text is { Length: >= 4 } && TimeOnly.TryParseExact(text[..4], "HHmm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time : null;

    private static string Date(DateOnly? date) => date?.ToString("yyyyMMdd", CultureInfo.InvariantCulture) ?? "";
}
