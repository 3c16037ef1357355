using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Web.Studies.Pages;

#pragma warning disable CS1591 // members are named after what they hold; the records say what they are for
/// <summary>A study in the list.</summary>
public sealed record StudyLine(string Id, string Title, string Origin, DateTimeOffset CreatedAt, int Films, bool Closed, string? FollowUp, string? Outcome);

/// <summary>What is asked, and of whom; <c>Stated</c> is false while it only stands in the files.</summary>
public sealed record QuestionPage(int? AgeMonths, string? Sex, string InjuredSide, string Maturity, bool Stated);

/// <summary>A study as the page shows it. What the reader may not see yet is not in it.</summary>
public sealed record StudyPage(
    string Id, string Title, string Origin, string Caution, QuestionPage Question, IReadOnlyList<FilmPage> Films, WalkPage? Walk,
    IReadOnlyList<PromptPage> Prompts, IReadOnlyList<string> Conflicts, IReadOnlyList<string> Together, bool ExportStopped, bool ReportReady, string? FollowUp, string? Outcome, long Version);

/// <summary>A film; <c>State</c> is <c>reading</c>, <c>ready</c>, <c>refused</c> or <c>unreadable</c>.</summary>
public sealed record FilmPage(
    string Id, string Name, string State, string? Message, int Width, int Height, string View, string Side, bool SideContradicted, string Context,
    IReadOnlyList<string> Refusal, CarriesPage? Carries, AlignmentPage? Alignment, IReadOnlyList<EvidencePage>? Evidence, IReadOnlyList<OwnLinePage> OwnLines, IReadOnlyList<BroughtLinePage> Brought);

/// <summary>What a film can and cannot carry.</summary>
public sealed record CarriesPage(IReadOnlyList<string> Can, IReadOnlyList<CannotPage> Cannot, double? ViewErrorDegrees);

/// <summary>Something a film cannot carry, and why.</summary>
public sealed record CannotPage(string Title, IReadOnlyList<string> Reasons);

/// <summary>Lines, measurements and landmarks of a film; <c>Partial</c> while only lines beside the reader's own are shown.</summary>
public sealed record AlignmentPage(bool Partial, string Overlay, IReadOnlyList<MeasurementPage> Measurements, IReadOnlyList<LandmarkPage> Landmarks);

/// <summary>What moves while a landmark is dragged: the lines, and the measurements without what stays as it was.</summary>
public sealed record TriedPage(string Overlay, IReadOnlyList<TriedMeasurement> Measurements);

/// <summary>A measurement while a landmark is dragged.</summary>
public sealed record TriedMeasurement(string Name, string? Value, string State, IReadOnlyList<string> Reasons);

/// <summary>A measurement in words.</summary>
public sealed record MeasurementPage(
    string Name, string Title, string? Value, string State, IReadOnlyList<string> Reasons, string Note, string Source, IReadOnlyList<string> References);

/// <summary>A landmark; <c>Ellipse</c> gives half axes in pixels and the turn of the first in degrees.</summary>
public sealed record LandmarkPage(string Name, double? X, double? Y, bool ByReader, double[]? Ellipse);

/// <summary>Something to look at.</summary>
public sealed record EvidencePage(string Name, string Title, bool LookHere);

/// <summary>A line laid by hand; <c>Difference</c> once the tool's is shown.</summary>
public sealed record OwnLinePage(string Name, double[] From, double[] To, bool Compared, string? Difference);

/// <summary>A line somebody else laid; sent only once the reader has laid that line.</summary>
public sealed record BroughtLinePage(string Name, double[] From, double[] To, bool ByTeacher);

/// <summary>The systematic read.</summary>
public sealed record WalkPage(string Version, DateTimeOffset StartedAt, DateTimeOffset? ConcludedAt, bool VisibleFromStart, IReadOnlyList<StepPage> Steps);

/// <summary>A step; <c>Open</c> counts the questions that wait for the reader's own answer; where several marks may be set, none is one.</summary>
public sealed record StepPage(string Topic, string Title, bool HasProposals, bool Shown, int Open, IReadOnlyList<ItemPage> Items);

/// <summary>A question with the answer that stands.</summary>
public sealed record ItemPage(
    string Id, string Question, IReadOnlyList<WalkChoice> Choices, bool Several, IReadOnlyList<string>? Answer, string? Note, bool AfterTool, bool Changed, IReadOnlyList<CropPage> Crops);

/// <summary>A square of a film to look at, pixels of the original image.</summary>
public sealed record CropPage(string FilmId, double X, double Y, double Side);

/// <summary>A prompt.</summary>
public sealed record PromptPage(string Code, string Text, string Source);
#pragma warning restore CS1591
