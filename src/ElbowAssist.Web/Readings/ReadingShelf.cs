using ElbowAssist.Drawing;
using ElbowAssist.Exchange.Dicom.Films;
using ElbowAssist.Reading;

namespace ElbowAssist.Web.Readings;

/// <summary>A reading made for another program, with what its pictures and DICOM objects need.</summary>
internal sealed record ShelvedReading(string Key, FilmReading Reading, GreyPicture Picture, DicomSource? Dicom);

/// <summary>
/// The readings made last, by content of the film and what was said of it: the same request gives the same reading
/// without reading the film again. Bounded; what falls off is read again when asked for again.
/// </summary>
internal sealed class ReadingShelf
{
    private const int Places = 32;

    private readonly Lock gate = new();
    private readonly Dictionary<string, LinkedListNode<ShelvedReading>> byKey = new(StringComparer.Ordinal);
    private readonly LinkedList<ShelvedReading> order = new();

    public ShelvedReading? Find(string key)
    {
        lock (gate)
        {
            if (!byKey.TryGetValue(key, out var node))
            {
                return null;
            }

            order.Remove(node);
            order.AddFirst(node);
            return node.Value;
        }
    }

    public void Put(ShelvedReading reading)
    {
        lock (gate)
        {
            if (byKey.ContainsKey(reading.Key))
            {
                return;
            }

            byKey[reading.Key] = order.AddFirst(reading);
            while (order.Count > Places)
            {
                byKey.Remove(order.Last!.Value.Key);
                order.RemoveLast();
            }
        }
    }
}
