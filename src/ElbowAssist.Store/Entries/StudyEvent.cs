using System.Collections.Immutable;
using System.Text.Json.Serialization;
using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Geometry;
using ElbowAssist.Reading.Walks;

namespace ElbowAssist.Store.Entries;

/// <summary>One thing that happened to a study. Events are added and never changed; what stands follows from all of them.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(QuestionStated), "question-stated")]
[JsonDerivedType(typeof(FilmStated), "film-stated")]
[JsonDerivedType(typeof(WalkBegun), "walk-begun")]
[JsonDerivedType(typeof(Answered), "answered")]
[JsonDerivedType(typeof(ProposalsShown), "proposals-shown")]
[JsonDerivedType(typeof(EnhancedOpened), "enhanced-opened")]
[JsonDerivedType(typeof(PromptDealtWith), "prompt-dealt-with")]
[JsonDerivedType(typeof(LandmarkLaid), "landmark-laid")]
[JsonDerivedType(typeof(LandmarkGivenBack), "landmark-given-back")]
[JsonDerivedType(typeof(OwnLineLaid), "own-line-laid")]
[JsonDerivedType(typeof(LineCompared), "line-compared")]
[JsonDerivedType(typeof(LineBrought), "line-brought")]
[JsonDerivedType(typeof(WalkClosed), "walk-closed")]
[JsonDerivedType(typeof(FollowUpAsked), "follow-up-asked")]
[JsonDerivedType(typeof(OutcomeEntered), "outcome-entered")]
public abstract record StudyEvent;

/// <summary>What is asked of the films and of whom.</summary>
/// <param name="AgeMonths">Age in completed months, or null.</param>
/// <param name="Sex">Sex, or null.</param>
/// <param name="InjuredSide">The side the question is about.</param>
/// <param name="Maturity">Adult or child, used only where the age is unknown.</param>
public sealed record QuestionStated(int? AgeMonths, Sex? Sex, Side InjuredSide, Maturity Maturity) : StudyEvent;

/// <summary>What the reader says of a film; null leaves what was said before.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Side">Side.</param>
/// <param name="View">View.</param>
/// <param name="Context">Why it was taken.</param>
/// <param name="FullExtensionAndSupination">Whether the elbow was in full extension and supination.</param>
public sealed record FilmStated(string FilmId, Side? Side, View? View, FilmContext? Context, bool? FullExtensionAndSupination) : StudyEvent;

/// <summary>A read was begun; one begun before it is closed is put aside.</summary>
public sealed record WalkBegun(WalkRecord Walk) : StudyEvent;

/// <summary>An answer of the reader.</summary>
public sealed record Answered(WalkAnswer Answer) : StudyEvent;

/// <summary>The tool's proposals came into view.</summary>
public sealed record ProposalsShown(ToolShown Shown) : StudyEvent;

/// <summary>An enhanced crop was opened.</summary>
public sealed record EnhancedOpened(EnhancedShown Shown) : StudyEvent;

/// <summary>A prompt was dealt with.</summary>
public sealed record PromptDealtWith(PromptSettled Settled) : StudyEvent;

/// <summary>The reader moved or placed a landmark.</summary>
public sealed record LandmarkLaid(LandmarkMove Move) : StudyEvent;

/// <summary>The reader took a landmark back to where the tool had proposed it.</summary>
public sealed record LandmarkGivenBack(string FilmId, string Landmark) : StudyEvent;

/// <summary>The reader laid a line by hand; a later one of the same name on the same film takes its place.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Name">Name of the line, e.g. <c>anterior-humeral-line</c>.</param>
/// <param name="From">One point of it, pixels of the original image.</param>
/// <param name="To">Another.</param>
/// <param name="ToolWasVisible">Whether the tool's line was on view when it was laid.</param>
public sealed record OwnLineLaid(string FilmId, string Name, Point From, Point To, bool ToolWasVisible) : StudyEvent;

/// <summary>The tool's line of a name came into view beside the reader's own on one film, and nothing else of the tool's.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Name">Name of the line, as the reader's own.</param>
/// <param name="Values">What was shown.</param>
public sealed record LineCompared(string FilmId, string Name, ImmutableArray<ProposedValue> Values) : StudyEvent;

/// <summary>A line that somebody else laid on a film was brought in, from a case file or from a class; no name comes with it.</summary>
/// <param name="FilmId">Film.</param>
/// <param name="Name">Name of the line.</param>
/// <param name="From">One point of it, pixels of the original image.</param>
/// <param name="To">Another.</param>
/// <param name="ByTeacher">True for the line of a case file, false for one of a class.</param>
public sealed record LineBrought(string FilmId, string Name, Point From, Point To, bool ByTeacher) : StudyEvent;

/// <summary>The read was closed.</summary>
public sealed record WalkClosed(DateTimeOffset At) : StudyEvent;

/// <summary>The reader put the study on the follow-up list.</summary>
public sealed record FollowUpAsked(string Note) : StudyEvent;

/// <summary>What became of it; takes the study off the list.</summary>
public sealed record OutcomeEntered(string Note) : StudyEvent;
