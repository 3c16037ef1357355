using System.Text.Json;
using ElbowAssist.Geometry;

namespace ElbowAssist.Exchange.Json;

/// <summary>A place in a JSON document that knows its path, so that every complaint says where.</summary>
internal readonly struct JsonCursor(JsonElement element, string path)
{
    public JsonElement Element => element;

    public string Path => path.Length == 0 ? "the document" : path;

    public JsonValueKind Kind => element.ValueKind;

    public bool Has(string name) => Kind == JsonValueKind.Object && element.TryGetProperty(name, out _);

    public JsonCursor Required(string name)
    {
        Expect(JsonValueKind.Object, "an object");
        return element.TryGetProperty(name, out var child)
            ? new JsonCursor(child, Join(name))
            : throw Fail($"lacks \"{name}\"");
    }

    /// <summary>The member, or null where it is missing or null.</summary>
    public JsonCursor? Optional(string name)
    {
        Expect(JsonValueKind.Object, "an object");
        return element.TryGetProperty(name, out var child) && child.ValueKind != JsonValueKind.Null
            ? new JsonCursor(child, Join(name))
            : null;
    }

    /// <summary>The member, which must be there but may be null.</summary>
    public JsonCursor? Nullable(string name)
    {
        var child = Required(name);
        return child.Kind == JsonValueKind.Null ? null : child;
    }

    public IReadOnlyList<JsonCursor> Items()
    {
        Expect(JsonValueKind.Array, "a list");
        var at = path;
        return [.. element.EnumerateArray().Select((e, i) => new JsonCursor(e, string.Create(Invariant, $"{at}[{i}]")))];
    }

    public IReadOnlyList<T> Items<T>(Func<JsonCursor, T> read) => [.. Items().Select(read)];

    public IReadOnlyList<(string Name, JsonCursor Value)> Members()
    {
        Expect(JsonValueKind.Object, "an object");
        var self = this;
        return [.. element.EnumerateObject().Select(m => (m.Name, new JsonCursor(m.Value, self.Join(m.Name))))];
    }

    public string Text()
    {
        Expect(JsonValueKind.String, "a text");
        return element.GetString()!;
    }

    public double Number()
    {
        Expect(JsonValueKind.Number, "a number");
        return element.TryGetDouble(out var value) && double.IsFinite(value) ? value : throw Fail("must be a finite number");
    }

    public int Integer()
    {
        Expect(JsonValueKind.Number, "a whole number");
        return element.TryGetInt32(out var value) ? value : throw Fail("must be a whole number");
    }

    public ulong Unsigned()
    {
        Expect(JsonValueKind.Number, "a whole number");
        return element.TryGetUInt64(out var value) ? value : throw Fail("must be a whole number from 0 to 18446744073709551615");
    }

    public bool Flag() => Kind switch
    {
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => throw Fail("must be true or false"),
    };

    public T Word<T>(Vocabulary<T> vocabulary)
        where T : struct, Enum =>
        vocabulary.TryParse(Text(), out var value) ? value : throw Fail($"must be {vocabulary.Choices}");

    public (double First, double Second) Pair()
    {
        var items = Items();
        return items.Count == 2 ? (items[0].Number(), items[1].Number()) : throw Fail("must be a list of two numbers");
    }

    public Point Point()
    {
        var (x, y) = Pair();
        return new Point(x, y);
    }

    public Vector Vector()
    {
        var (x, y) = Pair();
        return new Vector(x, y);
    }

    public Covariance SymmetricMatrix()
    {
        var rows = Items();
        if (rows.Count != 2)
        {
            throw Fail("must be a list of two rows");
        }

        var (xx, xy) = rows[0].Pair();
        var (yx, yy) = rows[1].Pair();
        var covariance = new Covariance(xx, xy, yy);
        return xy == yx && covariance.IsValid ? covariance : throw Fail("is not a covariance matrix");
    }

    public ExchangeFormatException Fail(string problem) => new($"{Path} {problem}.");

    private static IFormatProvider Invariant => System.Globalization.CultureInfo.InvariantCulture;

    private string Join(string name) => path.Length == 0 ? name : $"{path}.{name}";

    private void Expect(JsonValueKind kind, string what)
    {
        if (element.ValueKind != kind)
        {
            throw Fail($"must be {what}");
        }
    }
}
