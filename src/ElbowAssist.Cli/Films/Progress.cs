using System.Globalization;

namespace ElbowAssist.Cli.Films;

/// <summary>
/// A count of finished films on standard error, where a person watches it and the summary lines go elsewhere; otherwise
/// the summary lines themselves tell.
/// </summary>
internal sealed class Progress(int films) : IDisposable
{
    private readonly bool shown = films > 1 && !Console.IsErrorRedirected && Console.IsOutputRedirected;
    private int done;

    public void Step()
    {
        done++;
        if (shown)
        {
            Console.Error.Write(string.Create(CultureInfo.InvariantCulture, $"\r{done} of {films} films"));
        }
    }

    public void WriteLine(string sentence)
    {
        if (shown)
        {
            Console.Error.WriteLine();
        }

        Console.Error.WriteLine(sentence);
    }

    public void Dispose()
    {
        if (shown)
        {
            Console.Error.WriteLine();
        }
    }
}
