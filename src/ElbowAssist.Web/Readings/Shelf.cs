namespace ElbowAssist.Web.Readings;

/// <summary>
/// What was made last, by content of the films and what was said of them: the same request gives the same answer without
/// reading a film again. Bounded; what falls off is made again when asked for again.
/// </summary>
/// <param name="places">How many it holds.</param>
internal sealed class Shelf<T>(int places)
    where T : class
{
    private readonly Lock gate = new();
    private readonly Dictionary<string, LinkedListNode<(string Key, T Made)>> byKey = new(StringComparer.Ordinal);
    private readonly LinkedList<(string Key, T Made)> order = new();

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
            while (order.Count > places)
            {
                byKey.Remove(order.Last!.Value.Key);
                order.RemoveLast();
            }
        }
    }
}
