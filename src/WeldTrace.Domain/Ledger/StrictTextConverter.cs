using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace WeldTrace.Domain.Ledger;

/// <summary>The serializer's own writer would turn half a surrogate pair into U+FFFD in silence.</summary>
internal sealed class StrictTextConverter : JsonConverter<string>
{
    private static readonly ConditionalWeakTable<
        JsonSerializerOptions,
        JsonSerializerOptions
    > Known = [];

    public static JsonSerializerOptions AddTo(JsonSerializerOptions options) =>
        Known.GetValue(
            options,
            static source =>
            {
                var strict = new JsonSerializerOptions(source);
                strict.Converters.Add(new StrictTextConverter());
                return strict;
            }
        );

    public override string? Read(ref Utf8JsonReader reader, Type type, JsonSerializerOptions o) =>
        reader.GetString();

    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions o) =>
        writer.WriteStringValue(StrictJson.ToUtf8(value));

    public override string ReadAsPropertyName(
        ref Utf8JsonReader reader,
        Type type,
        JsonSerializerOptions o
    ) => reader.GetString()!;

    public override void WriteAsPropertyName(
        Utf8JsonWriter writer,
        string value,
        JsonSerializerOptions o
    ) => writer.WritePropertyName(StrictJson.ToUtf8(value));
}
