namespace ElbowAssist.Drawing.Report;

/// <summary>
/// The style of the page. A solid rule stands beside what the reader found, a dashed one beside what the tool proposed, in
/// the inks of the films darkened for paper; no other colour carries a meaning.
/// </summary>
internal static class ReportStyle
{
    public const string Css = """
        @page { size: A4; margin: 14mm 14mm 20mm 14mm;
          @bottom-left { content: "Not a medical device. Second look only. Nothing here excludes a fracture."; font: 7.5pt "DejaVu Sans", Verdana, sans-serif; color: #333; }
          @bottom-right { content: "page " counter(page) " of " counter(pages); font: 7.5pt "DejaVu Sans", Verdana, sans-serif; color: #333; } }
        * { box-sizing: border-box; }
        body { font: 9pt/1.38 "DejaVu Sans", Verdana, sans-serif; color: #1c1c1c; background: #fff; max-width: 182mm; margin: 0 auto; padding: 4mm 0; }
        h1 { font-size: 15pt; margin: 0 0 1.5mm; }
        h2 { font-size: 11.5pt; margin: 6mm 0 2mm; border-bottom: 0.3mm solid #1c1c1c; padding-bottom: 0.8mm; break-after: avoid; }
        h3 { font-size: 9.5pt; margin: 3mm 0 1mm; break-after: avoid; }
        p { margin: 0 0 1.5mm; }
        ul, ol { margin: 0 0 2mm; padding-left: 5mm; }
        li { margin-bottom: 0.8mm; break-inside: avoid; }
        .prompts { break-inside: avoid; }
        .caution { border: 0.4mm solid #1c1c1c; padding: 2mm 3mm; margin: 3mm 0; break-inside: avoid; }
        .last { break-before: avoid; }
        .sources { columns: 2; column-gap: 7mm; }
        .reader { border-left: 1.4mm solid #B8A400; padding-left: 3mm; }
        .tool { border-left: 1.4mm dashed #2E7FB3; padding-left: 3mm; }
        table { border-collapse: collapse; width: 100%; margin: 0 0 2.5mm; }
        th, td { text-align: left; vertical-align: top; padding: 0.5mm 2mm 0.5mm 0; border-bottom: 0.2mm solid #c4c4c4; }
        th { font-weight: 600; }
        thead { display: table-header-group; }
        tr { break-inside: avoid; }
        .steps { columns: 2; column-gap: 7mm; font-size: 7.5pt; line-height: 1.25; }
        .step { break-inside: avoid; }
        .step h3 { margin-top: 0; }
        .step td:first-child { width: 48%; color: #444; }
        .small { font-size: 7.5pt; color: #333; }
        .films { display: grid; grid-template-columns: 1fr 1fr; gap: 4mm; }
        figure { margin: 0; break-inside: avoid; }
        figure img { width: 100%; max-height: 88mm; object-fit: contain; background: #15181B; display: block; }
        figcaption { margin-top: 1mm; }
        .measurements { font-size: 8pt; }
        .measurements td:first-child { width: 20%; }
        .measurements td:last-child { width: 34%; }
        .strip svg { width: 100%; height: auto; display: block; }
        .strip { break-inside: avoid; }
        """;
}
