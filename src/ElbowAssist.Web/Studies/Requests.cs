using System.ComponentModel;

namespace ElbowAssist.Web.Studies;

/// <summary>A study to begin.</summary>
/// <param name="Title">Title for the list; no patient's name belongs here.</param>
/// <param name="Demo">Name of a bundled demo study, or null for an empty one.</param>
public sealed record NewStudy(string? Title, string? Demo);

/// <summary>What is asked of the films; begins the systematic read.</summary>
/// <param name="AgeMonths">Age in completed months, or null.</param>
/// <param name="Sex"><c>F</c>, <c>M</c> or null.</param>
/// <param name="InjuredSide"><c>left</c>, <c>right</c> or <c>unknown</c>.</param>
/// <param name="Maturity"><c>adult</c>, <c>child</c>, <c>adolescent</c> or <c>unknown</c>; used only where the age is unknown.</param>
/// <param name="ProposalsVisible">True to show the tool's proposals before the reader's own answers; noted in every report.</param>
public sealed record Question(int? AgeMonths, string? Sex, string? InjuredSide, string? Maturity, bool ProposalsVisible);

/// <summary>What the reader says of a film; null leaves it.</summary>
/// <param name="Side"><c>left</c>, <c>right</c>.</param>
/// <param name="View"><c>lateral</c>, <c>ap</c>, <c>oblique</c>.</param>
/// <param name="Context"><c>acute</c>, <c>after-reduction</c>, <c>cast</c>, <c>fixation</c>, <c>follow-up</c>.</param>
/// <param name="FullExtensionAndSupination">Whether the elbow was in full extension and supination.</param>
public sealed record FilmWords(string? Side, string? View, string? Context, bool? FullExtensionAndSupination);

/// <summary>An answer.</summary>
/// <param name="ItemId">Question.</param>
/// <param name="Choices">Codes of the choices taken.</param>
/// <param name="Note">Free words, or null.</param>
public sealed record Answer(string ItemId, IReadOnlyList<string> Choices, string? Note);

/// <summary>A topic whose proposals are to be shown.</summary>
public sealed record ShowTopic(string Topic);

/// <summary>A line laid by hand, in pixels of the original image.</summary>
/// <param name="Name"><c>anterior-humeral-line</c> or <c>radiocapitellar-line</c>.</param>
/// <param name="From">x and y of one point.</param>
/// <param name="To">x and y of another.</param>
public sealed record HandLine(string Name, [property: Description("x, y")] double[] From, [property: Description("x, y")] double[] To);

/// <summary>A place for a landmark, in pixels of the original image.</summary>
public sealed record Place(double X, double Y);

/// <summary>Words of the reader.</summary>
public sealed record Note(string? Text);
