using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Rules;

namespace ElbowAssist.Reading.Studies;

/// <summary>Where a difference lies against its limit.</summary>
public enum DifferenceState
{
    /// <summary>No limit is set for this measurement.</summary>
    NoLimit,

    /// <summary>The whole interval lies beyond the limit.</summary>
    BeyondLimit,

    /// <summary>The interval lies on both sides of the limit.</summary>
    EitherSideOfLimit,

    /// <summary>The interval does not reach the limit.</summary>
    LimitNotReached,
}

/// <summary>A prompt of a study and the films it rests on; no films where it rests on the reader's marks.</summary>
public sealed record StudyPrompt(string Code, string Text, string Source, Urgency Urgency, IReadOnlyList<string> FilmIds);

/// <summary>Something that films of one side say together.</summary>
public sealed record CrossViewNote(string Code, string Text, IReadOnlyList<string> FilmIds);

/// <summary>A contradiction within the study.</summary>
/// <param name="Code">Stable code.</param>
/// <param name="Text">A sentence for the reader.</param>
/// <param name="FilmIds">Films concerned.</param>
/// <param name="StopsExport">True if nothing may leave the study until the reader has settled it.</param>
public sealed record StudyConflict(string Code, string Text, IReadOnlyList<string> FilmIds, bool StopsExport);

/// <summary>A view the study lacks. Naming it asks nobody to move a limb.</summary>
public sealed record MissingView(string Code, Side Side, string Text);

/// <summary>A measurement on both sides, same view.</summary>
/// <param name="Name">Measurement name.</param>
/// <param name="Unit">Unit of value and interval.</param>
/// <param name="FirstFilmId">Film of the side asked about (the left where none is).</param>
/// <param name="SecondFilmId">Film of the other side.</param>
/// <param name="Value">First minus second.</param>
/// <param name="Redraw95">Where the difference would fall if both films were laid again; the layings are independent.</param>
/// <param name="Limit">Limit of the absolute difference, or null.</param>
/// <param name="State">Where the interval lies against the limit.</param>
public sealed record SideDifference(
    string Name, string Unit, string FirstFilmId, string SecondFilmId, double Value, Interval Redraw95, double? Limit, DifferenceState State);

/// <summary>A measurement of one side and view at two times.</summary>
/// <param name="Name">Measurement name.</param>
/// <param name="Unit">Unit of value and interval.</param>
/// <param name="Side">Side.</param>
/// <param name="View">View of both films.</param>
/// <param name="EarlierFilmId">Earlier film.</param>
/// <param name="LaterFilmId">Later film.</param>
/// <param name="Value">Later minus earlier.</param>
/// <param name="Redraw95">Where the difference would fall if both films were laid again.</param>
public sealed record TimeDifference(
    string Name, string Unit, Side Side, View View, string EarlierFilmId, string LaterFilmId, double Value, Interval Redraw95);
