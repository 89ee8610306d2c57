using System.Reflection;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using WeldTrace.Domain.Records;
using WeldTrace.Engineering.Quantities;

namespace WeldTrace.Persistence.Mappings;

internal static class MappingExtensions
{
    public static EntityTypeBuilder<T> IsRecord<T>(this EntityTypeBuilder<T> entity, string table)
        where T : Record
    {
        entity.ToTable(table);
        entity.HasKey(r => r.Id);
        entity.Property(r => r.Id).ValueGeneratedNever();
        entity.Property(r => r.Version).IsConcurrencyToken();
        foreach (var property in typeof(T).GetProperties().Where(IsComputed))
        {
            entity.Ignore(property.Name);
        }

        return entity;
    }

    /// <summary>Details that are only ever read with their record are one JSON column, written as in the ledger.</summary>
    public static PropertyBuilder<T> IsJson<T>(this PropertyBuilder<T> property)
    {
        property.HasColumnType("jsonb");
        property.HasConversion(
            value => Write(value),
            text => JsonSerializer.Deserialize<T>(text, DomainJson.Options)!,
            new ValueComparer<T>(
                (left, right) => AreSame(left, right),
                value => Write(value).GetHashCode(StringComparison.Ordinal),
                value => value
            )
        );
        return property;
    }

    // What is kept as JSON is replaced, never changed in place: the same instance is unchanged, which each save asks of everything it tracks.
    private static bool AreSame<T>(T? left, T? right) =>
        ReferenceEquals(left, right) || Write(left!) == Write(right!);

    /// <summary>The column holds the SI value; its name ends with the unit.</summary>
    public static PropertyBuilder<T> IsQuantity<T>(this PropertyBuilder<T> property, string column)
        where T : struct, IQuantity<T>
    {
        property.HasColumnName(column);
        property.HasConversion(new ValueConverter<T, double>(q => q.SiValue, si => FromSi<T>(si)));
        return property;
    }

    public static PropertyBuilder<T?> IsQuantity<T>(
        this PropertyBuilder<T?> property,
        string column
    )
        where T : struct, IQuantity<T>
    {
        property.HasColumnName(column);
        property.HasConversion(new ValueConverter<T, double>(q => q.SiValue, si => FromSi<T>(si)));
        return property;
    }

    public static PropertyBuilder<T> IsWord<T>(this PropertyBuilder<T> property)
        where T : struct, Enum
    {
        property.HasConversion<string>().HasMaxLength(40);
        return property;
    }

    // A private setter of an inherited property shows only on the type that declares it.
    private static bool IsComputed(PropertyInfo property) =>
        property.DeclaringType!.GetProperty(property.Name)!.SetMethod is null;

    // A static abstract member can't be called in an expression tree.
    private static T FromSi<T>(double si)
        where T : struct, IQuantity<T> => T.FromSi(si);

    private static string Write<T>(T value) => JsonSerializer.Serialize(value, DomainJson.Options);
}
