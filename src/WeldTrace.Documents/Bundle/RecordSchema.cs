using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Documents.Bundle;

/// <summary>
/// The JSON Schema (draft 2020-12) of the records in a bundle, one definition per kind, as it follows from the types. The published file
/// beside this class is held equal to it by a test, so that the form of a record can't change unseen.
/// </summary>
public static class RecordSchema
{
    private const string Instant = @"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{6}Z$";

    private static readonly JsonSchemaExporterOptions _exporting = new()
    {
        TreatNullObliviousAsNonNullable = true,
        TransformSchemaNode = Told,
    };

    private static readonly JsonSerializerOptions _indented = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The published file, as it goes into each bundle.</summary>
    public static byte[] Published() => BundleSchema.Read("records.schema.json");

    /// <summary>The schema that follows from the types.</summary>
    public static string FromTypes()
    {
        var kinds = typeof(Record)
            .Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(Record)) && !type.IsAbstract)
            .Select(type => (Kind: KindOf(type), Type: type))
            .OrderBy(pair => pair.Kind, StringComparer.Ordinal);
        var definitions = new JsonObject();
        foreach (var (kind, type) in kinds)
        {
            var definition = DomainJson.Options.GetJsonSchemaAsNode(type, _exporting);
            Rebase(definition, $"#/$defs/{kind}");
            definitions[kind] = definition;
        }

        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Records of a weld history, one definition per kind of record",
            ["description"] =
                "records/<kind>/<id>.json of a history bundle is an instance of $defs/<kind>. A value that is not on record is left out.",
            ["$defs"] = definitions,
        }
            .ToJsonString(_indented)
            .ReplaceLineEndings("\n");
    }

    // A part that is used twice is told once and pointed at, from the root of its type; here that root lies deeper.
    private static void Rebase(JsonNode? node, string root)
    {
        switch (node)
        {
            case JsonObject told:
                if (told["$ref"] is JsonValue pointer)
                {
                    told["$ref"] = root + pointer.GetValue<string>()[1..];
                }

                foreach (var (_, part) in told)
                {
                    Rebase(part, root);
                }

                break;
            case JsonArray parts:
                foreach (var part in parts)
                {
                    Rebase(part, root);
                }

                break;
        }
    }

    private static string KindOf(Type type) =>
        ((Record)RuntimeHelpers.GetUninitializedObject(type)).Kind;

    private static JsonNode Told(JsonSchemaExporterContext context, JsonNode schema)
    {
        var type = context.TypeInfo.Type;
        var bare = Nullable.GetUnderlyingType(type) ?? type;
        if (bare == typeof(DateTimeOffset))
        {
            return new JsonObject { ["type"] = "string", ["pattern"] = Instant };
        }

        if (UnitOf(bare) is { } unit)
        {
            return new JsonObject
            {
                ["type"] = "object",
                ["properties"] = new JsonObject
                {
                    ["value"] = new JsonObject { ["type"] = "number" },
                    ["unit"] = new JsonObject { ["const"] = unit },
                },
                ["required"] = new JsonArray("value", "unit"),
                ["additionalProperties"] = false,
            };
        }

        if (schema is JsonObject told && told["properties"] is JsonObject properties)
        {
            foreach (var property in context.TypeInfo.Properties)
            {
                // Of an optional parameter with a converter of its own the exporter tells nothing but the default.
                if (
                    properties[property.Name] is JsonObject { Count: 1 } silent
                    && silent.ContainsKey("default")
                )
                {
                    properties[property.Name] = DomainJson.Options.GetJsonSchemaAsNode(
                        property.PropertyType,
                        _exporting
                    );
                }
            }

            told["additionalProperties"] = false;
            told["required"] = new JsonArray([
                .. context
                    .TypeInfo.Properties.Where(p => !p.IsGetNullable)
                    .Select(p => JsonValue.Create(p.Name)),
            ]);
        }

        return schema;
    }

    // The SI unit of a quantity; null for everything else.
    private static string? UnitOf(Type type) =>
        type.IsValueType
        && type.GetInterfaces()
            .Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IQuantity<>))
            ? (string)
                type.GetProperty("SiUnit", BindingFlags.Public | BindingFlags.Static)!
                    .GetValue(null)!
            : null;
}
