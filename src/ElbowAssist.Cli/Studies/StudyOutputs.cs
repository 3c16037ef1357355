using System.Text;
using ElbowAssist.Drawing;
using ElbowAssist.Drawing.Report;
using ElbowAssist.Exchange.Json.Studies;
using ElbowAssist.Reading.Studies;

namespace ElbowAssist.Cli.Studies;

/// <summary>The files written for a study.</summary>
internal static class StudyOutputs
{
    public const string Study = "study.json";
    public const string Page = "report.html";
    public const string Dictation = "report.txt";

    /// <summary>Names and contents; while a contradiction stops the export, the study alone.</summary>
    public static IReadOnlyList<(string Name, byte[] Content)> Of(Study study, IReadOnlyDictionary<string, GreyPicture> pictures) =>
        study.ExportIsStopped
            ? [(Study, StudyJson.Write(study))]
            :
            [
                (Page, StudyReport.Html(study, pictures)),
                (Dictation, Encoding.UTF8.GetBytes(StudyReport.Text(study))),
                (Study, StudyJson.Write(study)),
            ];
}
