using System.Net;
using System.Text;
using ElbowAssist.Bench.Comparing;
using ElbowAssist.Bench.Tables;

namespace ElbowAssist.Bench.Reports;

/// <summary>Pieces of a page.</summary>
internal static class Html
{
    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A table with its title. A long one is folded, and its rows about all films stand before it.</summary>
    public static string Of(Table table)
    {
        const int openRows = 40;
        var group = table.Columns.ToList().IndexOf("group");
        if (table.Rows.Count <= openRows || group < 0)
        {
            return Folded(table, table.Title, open: table.Rows.Count <= openRows);
        }

        var all = table with { Rows = [.. table.Rows.Where(r => Strata.All.Equals(r[group]))] };
        return Folded(all, table.Title + "; all films", open: true) + Folded(table, "every group", open: false);
    }

    private static string Folded(Table table, string title, bool open)
    {
        var text = new StringBuilder();
        text.Append("<details").Append(open ? " open" : "").Append("><summary><b>").Append(Text(table.Name)).Append("</b>: ").Append(Text(title)).Append("</summary><div class=\"wide\"><table><thead><tr>");
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
