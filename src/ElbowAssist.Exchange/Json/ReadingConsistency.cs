using ElbowAssist.Reading;

namespace ElbowAssist.Exchange.Json;

/// <summary>What must hold of every reading that enters or leaves: a withheld or refused value leaks nowhere.</summary>
internal static class ReadingConsistency
{
    /// <summary>The first broken rule as a sentence, or null.</summary>
    public static string? FirstBreach(FilmReading reading)
    {
        if (reading.Adequacy.Refused &&
            (reading.Landmarks.Count > 0 || reading.Lines.Count > 0 || reading.Circles.Count > 0 || reading.Measurements.Count > 0))
        {
            return "A refused reading holds no landmarks, lines, circles or measurements.";
        }

        var names = new HashSet<string>(StringComparer.Ordinal);
        foreach (var m in reading.Measurements)
        {
            if (!names.Add(m.Name))
            {
                return $"The measurement {m.Name} stands twice in the reading.";
            }

            if (m.State != MeasurementState.Withheld)
            {
                if (m.Value is null)
                {
                    return $"The measurement {m.Name} has neither a value nor the state \"withheld\".";
                }

                continue;
            }

            if (m.Value is not null || m.Redraw95 is not null || m.Zones is not null)
            {
                return $"The withheld measurement {m.Name} holds a value.";
            }

            if (m.Reasons.Count == 0)
            {
                return $"The withheld measurement {m.Name} gives no reason.";
            }

            if (reading.Lines.Any(l => l.Name == m.Name))
            {
                return $"The withheld measurement {m.Name} has a line.";
            }
        }

        return reading.CautionText.EndsWith(Caution.LastSentence, StringComparison.Ordinal)
            ? null
            : "A reading ends its caution with the sentence that nothing here excludes a fracture.";
    }
}
