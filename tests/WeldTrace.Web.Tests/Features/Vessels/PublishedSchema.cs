using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace WeldTrace.Web.Tests.Features.Vessels;

/// <summary>A schema of <c>Schemas</c>, by which a document is judged with its formats (URI, date and time) as rules.</summary>
internal sealed class PublishedSchema(string name)
{
    private static readonly EvaluationOptions Options = new()
    {
        OutputFormat = OutputFormat.List,
        RequireFormatValidation = true,
        EvaluateAs = SpecVersion.Draft7,
    };

    private readonly JsonSchema _schema = JsonSerializer.Deserialize<JsonSchema>(
        typeof(PublishedSchema).Assembly.GetManifestResourceStream(name)!
    )!;

    /// <summary>What is wrong, and where; empty when the document is valid.</summary>
    public IReadOnlyList<string> Errors(JsonNode document)
    {
        var result = _schema.Evaluate(document, Options);
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
