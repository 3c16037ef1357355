namespace ElbowAssist.Web.Readings;

/// <summary>
/// What was made last, by content of the films and what was said of them: the same request gives the same answer without
/// reading a film again. Bounded; what falls off is made again when asked for again.
/// </summary>
/// <param name="places">How many it holds.</param>
/// <param name="weight">About how many bytes one takes.</param>
internal sealed class Shelf<T>(int places, Func<T, long> weight)
    where T : class
{
    // Films of many megabytes take the places of several.
    private const long MostBytes = 256L << 20;

    private readonly Lock gate = new();
    private readonly Dictionary<string, LinkedListNode<(string Key, T Made)>> byKey = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Key, T Made)> order = new();
    private long held;

    public T? Find(string key)
    {
        lock (gate)
        {
            if (!byKey.TryGetValue(key, out var node))
            {
                return null;
            }

            order.Remove(node);
            order.AddFirst(node);
            return node.Value.Made;
        }
    }

    public void Put(string key, T made)
    {
        lock (gate)
        {
            if (byKey.ContainsKey(key))
            {
                return;
            }

            byKey[key] = order.AddFirst((key, made));
            held += weight(made);
            while (order.Count > places || (held > MostBytes && order.Count > 1))
            {
                held -= weight(order.Last!.Value.Made);
                byKey.Remove(order.Last!.Value.Key);
                order.RemoveLast();
            }
        }
    }
}
