using Microsoft.Extensions.DependencyInjection;
using WeldTrace.Documents.Layout;

namespace WeldTrace.Documents;

/// <summary>Makes the documents ready when the application starts.</summary>
public static class Registration
{
    /// <summary>Hands the shipped fonts to the PDF library, so that the first document need not wait for them.</summary>
    public static IServiceCollection AddDocuments(this IServiceCollection services)
    {
        Typefaces.Install();
        return services;
    }
}
