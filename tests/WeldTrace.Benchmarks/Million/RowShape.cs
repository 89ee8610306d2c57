using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Npgsql;
using WeldTrace.Domain.Records;
using WeldTrace.Persistence;

namespace WeldTrace.Benchmarks.Million;

/// <summary>Which column of a table holds which value of a record.</summary>
internal sealed class RowShape
{
    private readonly IProperty[] _properties;
    private readonly string[] _columns;
    private readonly bool[] _areJson;
    private int[]? _ordinals;

    private RowShape(IEntityType type)
    {
        var table = StoreObjectIdentifier.Create(type, StoreObjectType.Table)!.Value;
        _properties = [.. type.GetProperties().Where(p => !p.IsShadowProperty())];
        _columns = [.. _properties.Select(p => p.GetColumnName(table)!)];
        _areJson = [.. _properties.Select(p => p.GetColumnType() == "jsonb")];
    }

    public static RowShape Of(WeldTraceDbContext db, string table) =>
        new(db.Model.GetEntityTypes().Single(t => t.GetTableName() == table));

    public object? ValueOf(object?[] row, string property) =>
        row[Array.FindIndex(_properties, p => p.Name == property)];

    /// <summary>The row that a reader of all columns stands at.</summary>
    public object?[] Read(NpgsqlDataReader reader)
    {
        _ordinals ??= [.. _columns.Select(reader.GetOrdinal)];
        var row = new object?[_properties.Length];
        for (var i = 0; i < row.Length; i++)
        {
            var at = _ordinals[i];
            row[i] =
                reader.IsDBNull(at) ? null
                : _areJson[i]
                    ? JsonSerializer.Deserialize(
                        reader.GetString(at),
                        _properties[i].ClrType,
                        DomainJson.Options
                    )
                : reader.GetValue(at);
        }

        return row;
    }

    /// <summary>The row that a record was read from.</summary>
    public object?[] RowOf(Record record)
    {
        var row = new object?[_properties.Length];
        for (var i = 0; i < row.Length; i++)
        {
            var value = _properties[i].GetGetter().GetClrValue(record);
            row[i] =
                _areJson[i] ? value
                : _properties[i].GetTypeMapping().Converter is { } converter
                    ? converter.ConvertToProvider(value)
                : value;
            if (row[i] is DateTimeOffset time)
            {
                row[i] = time.UtcDateTime;
            }
        }

        return row;
    }
}
