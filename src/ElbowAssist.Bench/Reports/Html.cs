using System.Net;
using System.Text;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Reports;

/// <summary>Pieces of a page.</summary>
internal static class Html
{
    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A table with its title; long ones are folded.</summary>
    public static string Of(Table table)
    {
        const int openRows = 40;
        var text = new StringBuilder();
        text.Append("<details").Append(table.Rows.Count <= openRows ? " open" : "").Append("><summary><b>").Append(Text(table.Name)).Append("</b>: ").Append(Text(table.Title)).Append("</summary><div class=\"wide\"><table><thead><tr>");
        foreach (var column in table.Columns)
        {
            text.Append("<th>").Append(Text(column)).Append("</th>");
        }

        text.Append("</tr></thead><tbody>\n");
        foreach (var row in table.Rows)
        {
            text.Append("<tr>");
            foreach (var cell in row)
            {
                text.Append(cell is string ? "<td>" : "<td class=\"n\">").Append(Text(Table.Shown(cell))).Append("</td>");
            }

            text.Append("</tr>\n");
        }

        return text.Append("</tbody></table></div></details>\n").ToString();
    }
}
