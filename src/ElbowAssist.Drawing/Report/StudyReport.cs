using System.Text;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Drawing.Report;

/// <summary>The report of a study: a page that prints to A4 and holds everything it needs, and plain text for dictation.</summary>
public static class StudyReport
{
    /// <summary>The page as UTF-8 text. It loads nothing from anywhere.</summary>
    /// <param name="study">The study.</param>
    /// <param name="pictures">Films for the eye by film identifier; a film without one is drawn from its landmarks alone.</param>
    /// <exception cref="InvalidOperationException">A contradiction keeps the export stopped.</exception>
    public static byte[] Html(Study study, IReadOnlyDictionary<string, GreyPicture>? pictures = null)
    {
        Check(study);
        return Encoding.UTF8.GetBytes(ReportPage.Of(study, ReportContents.Of(study), pictures ?? new Dictionary<string, GreyPicture>()));
    }

    /// <summary>The report in plain text, lines of at most 78 characters, caution first and last.</summary>
    /// <exception cref="InvalidOperationException">A contradiction keeps the export stopped.</exception>
    public static string Text(Study study)
    {
        Check(study);
        return ReportText.Of(ReportContents.Of(study));
    }

    private static void Check(Study study)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (study.ExportIsStopped)
        {
            throw new InvalidOperationException("A contradiction in the study must be settled before a report is made: " +
                string.Join(' ', study.Conflicts.Where(c => c.StopsExport).Select(c => c.Text)));
        }
    }
}
