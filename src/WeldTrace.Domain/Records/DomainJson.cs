using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Domain.Records;

/// <summary>The one way in which records are written as JSON: for the ledger, for stored details and for exports.</summary>
public static class DomainJson
{
    /// <summary>Camel-case names, words for enumerations, quantities with their SI unit, UTC times to the microsecond, no nulls.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.General)
        {
            PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
            DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
            RespectNullableAnnotations = true,
            TypeInfoResolver = new DefaultJsonTypeInfoResolver { Modifiers = { LeaveOutComputed } },
        };
        options.Converters.Add(
            new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower, allowIntegerValues: false)
        );
        options.Converters.Add(new QuantityConverterFactory());
        options.Converters.Add(new UtcConverter());
        options.MakeReadOnly();
        return options;
    }

    // What follows from other properties would only repeat them, and would change with the program.
    private static void LeaveOutComputed(JsonTypeInfo type)
    {
        if (type.Type.Assembly != typeof(DomainJson).Assembly)
        {
            return;
        }

        for (var i = type.Properties.Count - 1; i >= 0; i--)
        {
            if (type.Properties[i].AttributeProvider is PropertyInfo { SetMethod: null })
            {
                type.Properties.RemoveAt(i);
            }
        }
    }

    private sealed class UtcConverter : JsonConverter<DateTimeOffset>
    {
        private const string Format = "yyyy-MM-dd'T'HH:mm:ss.ffffff'Z'";

        public override DateTimeOffset Read(
            ref Utf8JsonReader reader,
            Type typeToConvert,
            JsonSerializerOptions options
        ) =>
            DateTimeOffset.ParseExact(
                reader.GetString()!,
                Format,
                CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal
            );

        public override void Write(
            Utf8JsonWriter writer,
            DateTimeOffset value,
            JsonSerializerOptions options
        ) =>
            writer.WriteStringValue(
                value.UtcDateTime.ToString(Format, CultureInfo.InvariantCulture)
            );
    }

    private sealed class QuantityConverterFactory : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert) =>
            typeToConvert.IsValueType
            && typeToConvert
                .GetInterfaces()
                .Any(i => i.IsGenericType && i.GetGenericTypeDefinition() == typeof(IQuantity<>));

        public override JsonConverter CreateConverter(
            Type typeToConvert,
            JsonSerializerOptions options
        ) =>
            (JsonConverter)
                Activator.CreateInstance(
                    typeof(QuantityConverter<>).MakeGenericType(typeToConvert),
                    BindingFlags.Instance | BindingFlags.Public,
                    null,
                    null,
                    CultureInfo.InvariantCulture
                )!;
    }

    private sealed class QuantityConverter<T> : JsonConverter<T>
        where T : struct, IQuantity<T>
    {
        public override T Read(
            ref Utf8JsonReader reader,
            Type typeToConvert,
            JsonSerializerOptions options
        )
        {
            var written = JsonSerializer.Deserialize<WrittenQuantity>(ref reader, options);
            return written.Unit == T.SiUnit
                ? T.FromSi(written.Value)
                : throw new JsonException(
                    $"A {typeof(T).Name} is written in {T.SiUnit}, not in {written.Unit}."
                );
        }

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            JsonSerializer.Serialize(writer, new WrittenQuantity(value.SiValue, T.SiUnit), options);
    }

    private readonly record struct WrittenQuantity(double Value, string Unit);
}
