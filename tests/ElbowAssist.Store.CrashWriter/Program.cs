// Writes entries to a store as fast as it can and prints the number of each once it has been acknowledged, until killed.
using System.Globalization;
using ElbowAssist.Reading.Walks;
using ElbowAssist.Store;
using ElbowAssist.Store.Entries;

var (path, studyId) = (args[0], args[1]);
using var store = StudyStore.Open(path);
for (var i = 0; ; i++)
{
    var answer = new WalkAnswer("effusion.call", [WalkChoices.CannotTell], i.ToString(CultureInfo.InvariantCulture), DateTimeOffset.UnixEpoch, false);
    var kept = store.Append(studyId, "writer", new Answered(answer), new PromptDealtWith(new PromptSettled("code", null, DateTimeOffset.UnixEpoch)));
    if (i % 8 == 7)
    {
        store.AddFilm(studyId, "film", Guid.NewGuid().ToByteArray());
    }

    Console.Out.WriteLine(kept[^1].Number.ToString(CultureInfo.InvariantCulture));
    Console.Out.Flush();
}
