using ElbowAssist.Anatomy;
using ElbowAssist.Anatomy.Landmarks;
using ElbowAssist.Anatomy.Rules;
using ElbowAssist.Reading;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Testing.DrawnElbows;

/// <summary>Studies of drawn elbows of every age, shape, view, context and mark.</summary>
public static class RandomStudies
{
    /// <summary>The next study of a seeded generator.</summary>
    public static Study Next(Random random)
    {
        var months = random.Next(6, 900);
        var patient = new Patient(random.Next(8) == 0 ? null : months, random.Next(3) switch { 0 => null, 1 => Sex.Female, _ => Sex.Male });
        var growing = months < 15 * 12;
        var films = Enumerable.Range(0, random.Next(1, 4)).Select(n =>
        {
            var elbow = new DrawnElbow
            {
                Growing = growing,
                Capitellum = growing ? 43 : 58,
                CentreBeforeLine = (random.NextDouble() * 1.6) - 0.8,
                RadialOffset = (random.NextDouble() * 1.6) - 0.8,
                Baumann = 60 + (30 * random.NextDouble()),
                BackwardShift = random.Next(3) == 0 ? random.NextDouble() : 0,
                Extension = random.Next(3) == 0 ? 30 * random.NextDouble() : 0,
                FatPadAngle = 35 * random.NextDouble(),
                Mirrored = random.Next(2) == 0,
            };
            return DrawnStudies.Film(
                FormattableString.Invariant($"film-{n}.png"), elbow, random.Next(2) == 0 ? View.Lateral : View.Ap, (Side)random.Next(3), patient, (FilmContext)random.Next(6),
                random.Next(), random.Next(2) == 0 ? 0.2 : null, random.Next(2) == 0 ? LandmarkSource.Model : LandmarkSource.Reader, 0.3 + (4 * random.NextDouble()));
        });
        var marks = new ReaderMarks
        {
            Trauma = (Call)random.Next(4),
            Effusion = (Call)random.Next(4),
            Displaced = random.Next(3) == 0,
            Open = random.Next(6) == 0,
            Injuries = [(SuspectedInjury)random.Next(10), (SuspectedInjury)random.Next(10)],
        };
        return StudyAssembler.Assemble(new() { Tool = DrawnStudies.Tool, Films = [.. films], Marks = marks, StatedMaturity = (Maturity)random.Next(4) });
    }
}
