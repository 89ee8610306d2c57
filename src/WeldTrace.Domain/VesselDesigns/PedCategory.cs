namespace WeldTrace.Domain.VesselDesigns;

/// <summary>Category of a vessel by the Pressure Equipment Directive 2014/68/EU, article 13 and annex II.</summary>
public enum PedCategory
{
    /// <summary>Below the categories: sound engineering practice (article 4.3), or not under the directive.</summary>
    None,

    /// <summary>Category I.</summary>
    I,

    /// <summary>Category II.</summary>
    II,

    /// <summary>Category III.</summary>
    III,

    /// <summary>Category IV.</summary>
    IV,
}

/// <summary>PED categories in words.</summary>
public static class PedCategories
{
    /// <summary>The category as shown.</summary>
    public static string Word(PedCategory category) =>
        category == PedCategory.None ? "no category" : $"category {category}";
}
