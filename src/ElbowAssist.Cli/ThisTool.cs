using System.Reflection;
using ElbowAssist.Reading;

namespace ElbowAssist.Cli;

/// <summary>This program as readings name it.</summary>
internal static class ThisTool
{
    public static ToolIdentity Identity { get; } = new("ElbowAssist", Assembly.GetExecutingAssembly().GetName().Version!.ToString(3));
}
