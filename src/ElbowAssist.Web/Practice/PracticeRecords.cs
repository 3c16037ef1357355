namespace ElbowAssist.Web.Practice;

/// <summary>A practice film wanted.</summary>
/// <param name="Patient"><c>adult</c> or <c>child</c>.</param>
/// <param name="View"><c>lateral</c> or <c>ap</c>.</param>
/// <param name="Level">1 well positioned and uninjured, 2 as films come, 3 badly positioned.</param>
public sealed record PracticeWish(string Patient, string View, int Level);

/// <summary>A practice film; its truth stays with the service until it is answered.</summary>
/// <param name="Id">Identifier.</param>
/// <param name="Words">Age, sex, side, and that it is simulated.</param>
/// <param name="View">View.</param>
/// <param name="Width">Columns.</param>
/// <param name="Height">Rows.</param>
/// <param name="Lines">Lines to lay.</param>
/// <param name="Carries">Measurements of which to say whether the film can carry them.</param>
public sealed record PracticeFilm(string Id, string Words, string View, int Width, int Height, IReadOnlyList<string> Lines, IReadOnlyList<PracticeMeasurement> Carries);

/// <summary>A measurement to judge a film for.</summary>
/// <param name="Name">Name.</param>
/// <param name="Title">The same in words.</param>
public sealed record PracticeMeasurement(string Name, string Title);

/// <summary>What the learner laid and judged.</summary>
/// <param name="Lines">Lines laid.</param>
/// <param name="TrueView"><c>yes</c>, <c>no</c> or <c>cannot-tell</c>: within ten degrees of the true view.</param>
/// <param name="Fracture"><c>yes</c>, <c>no</c> or <c>cannot-tell</c>.</param>
/// <param name="Carries">Names of what the film can carry in the learner's eyes; null where it was not judged.</param>
public sealed record PracticeAnswer(IReadOnlyList<Studies.HandLine> Lines, string? TrueView, string? Fracture, IReadOnlyList<string>? Carries = null);

/// <summary>Truth of a practice film and the learner's own error.</summary>
/// <param name="Lines">True lines with the learner's error.</param>
/// <param name="ViewErrorDegrees">How far the film was turned away from the true view.</param>
/// <param name="Injuries">What was simulated, in words; empty without injury.</param>
/// <param name="Sentences">What the truth says of the answers.</param>
/// <param name="Carries">What the film can carry by its exact landmarks and view.</param>
public sealed record PracticeTruth(IReadOnlyList<PracticeLine> Lines, double ViewErrorDegrees, IReadOnlyList<string> Injuries, IReadOnlyList<string> Sentences, IReadOnlyList<PracticeCarried> Carries);

/// <summary>Whether a film can carry a measurement.</summary>
/// <param name="Title">The measurement in words.</param>
/// <param name="Can">Whether it can.</param>
/// <param name="Said">What the learner said; null where it was not judged.</param>
/// <param name="Reasons">Why it cannot.</param>
public sealed record PracticeCarried(string Title, bool Can, bool? Said, IReadOnlyList<string> Reasons);

/// <summary>A true line; the errors are null where none was laid.</summary>
/// <param name="Name">Name.</param>
/// <param name="Through">x and y of a point of the true line, pixels.</param>
/// <param name="Direction">Its direction.</param>
/// <param name="AngleErrorDegrees">Angle between the learner's line and the true one.</param>
/// <param name="OffsetOfCapitellum">Distance beside the capitellum's centre, in its diameters.</param>
public sealed record PracticeLine(string Name, double[] Through, double[] Direction, double? AngleErrorDegrees, double? OffsetOfCapitellum);

/// <summary>Own results.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">What was practised.</param>
/// <param name="Result">Figures.</param>
public sealed record PracticeLineResult(DateTimeOffset At, string Kind, System.Text.Json.JsonElement Result);
