using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace WeldTrace.Domain.Ledger;

/// <summary>Walks a JSON value and writes it with sorted members.</summary>
internal sealed class CanonicalTree
{
    private readonly CanonicalJsonWriter _writer = new();
    private int _depth;

    public static byte[] Write(JsonElement element) => Write(tree => tree.Element(element));

    public static byte[] Write(JsonNode? node) => Write(tree => tree.Node(node));

    private static byte[] Write(Action<CanonicalTree> write)
    {
        var tree = new CanonicalTree();
        try
        {
            write(tree);
        }
        catch (Exception error) when (error is InvalidOperationException or ArgumentException)
        {
            throw new CanonicalJsonException("The value has no canonical JSON form.", error);
        }
        return tree._writer.ToArray();
    }

    private void Element(JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                Members(element.EnumerateObject().Select(p => (p.Name, p.Value)), Element);
                break;
            case JsonValueKind.Array:
                Items(element.EnumerateArray(), Element);
                break;
            case JsonValueKind.String:
                _writer.String(element.GetString()!);
                break;
            case JsonValueKind.Number:
                var literal = JsonMarshal.GetRawUtf8Value(element);
                _writer.Raw(EcmaScriptNumber.Normalise(literal));
                break;
            default:
                _writer.Raw(JsonMarshal.GetRawUtf8Value(element));
                break;
        }
    }

    private void Node(JsonNode? node)
    {
        switch (node)
        {
            case null:
                _writer.Raw("null"u8);
                break;
            case JsonObject members:
                Members(members.Select(p => (p.Key, p.Value)), Node);
                break;
            case JsonArray items:
                Items(items, Node);
                break;
            case JsonValue value when value.TryGetValue<string>(out var text):
                _writer.String(text);
                break;
            case JsonValue value when value.TryGetValue<char>(out var letter):
                _writer.String(letter.ToString());
                break;
            default:
                _writer.Raw(CanonicalJson.FromText(node.ToJsonString()));
                break;
        }
    }

    private void Members<T>(IEnumerable<(string Name, T Value)> members, Action<T> write)
    {
        Enter();
        _writer.Raw("{"u8);
        var separator = "";
        foreach (var (name, value) in members.OrderBy(m => m.Name, StringComparer.Ordinal))
        {
            _writer.Raw(separator);
            _writer.String(name);
            _writer.Raw(":"u8);
            write(value);
            separator = ",";
        }
        _writer.Raw("}"u8);
        _depth--;
    }

    private void Items<T>(IEnumerable<T> items, Action<T> write)
    {
        Enter();
        _writer.Raw("["u8);
        var separator = "";
        foreach (var item in items)
        {
            _writer.Raw(separator);
            write(item);
            separator = ",";
        }
        _writer.Raw("]"u8);
        _depth--;
    }

    private void Enter()
    {
        if (++_depth > 256)
        {
            throw new CanonicalJsonException("The value is nested deeper than 256 levels.");
        }
    }
}
