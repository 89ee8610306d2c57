using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>A published schema, by which a document is judged with its formats (URI, date and time) as rules.</summary>
internal sealed class PublishedSchema
{
    private readonly JsonSchema _schema;
    private readonly EvaluationOptions _options;

    /// <param name="name">File of <c>Schemas</c>, draft 7.</param>
    public PublishedSchema(string name)
        : this(
            JsonSerializer.Deserialize<JsonSchema>(
                typeof(PublishedSchema).Assembly.GetManifestResourceStream(name)!
            )!,
            SpecVersion.Draft7
        ) { }

    private PublishedSchema(JsonSchema schema, SpecVersion version)
    {
        _schema = schema;
        _options = new()
        {
            OutputFormat = OutputFormat.List,
            RequireFormatValidation = true,
            EvaluateAs = version,
        };
    }

    /// <summary>One definition of a schema of the program's own, draft 2020-12.</summary>
    public static PublishedSchema Of(JsonNode schema, string definition) =>
        new(
            JsonSchema.FromText(
                new JsonObject
                {
                    ["$schema"] = schema["$schema"]!.DeepClone(),
                    ["$defs"] = schema["$defs"]!.DeepClone(),
                    ["$ref"] = $"#/$defs/{definition}",
                }.ToJsonString()
            ),
            SpecVersion.Draft202012
        );

    /// <summary>What is wrong, and where; empty when the document is valid.</summary>
    public IReadOnlyList<string> Errors(JsonNode document)
    {
        var result = _schema.Evaluate(document, _options);
        return result.IsValid
            ? []
            :
            [
                "invalid",
                .. result
                    .Details.Where(d => d is { IsValid: false, HasErrors: true })
                    .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))
                    .Distinct(),
            ];
    }
}
