using WeldTrace.Domain.Records;
using WeldTrace.Web.Security;

namespace WeldTrace.Web.Components.Forms;

/// <summary>Refusals of the domain as faults of a form.</summary>
public static class Faults
{
    /// <summary>Ties each refusal to the control that bears its field's name.</summary>
    /// <param name="outcome">What was refused.</param>
    /// <param name="form">Name of the posted form property.</param>
    /// <param name="fields">Names of controls on the page; a refusal for another field stands on its own.</param>
    public static IReadOnlyList<FieldFault> Of(
        Outcome outcome,
        string form,
        IEnumerable<string> fields
    )
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var known = fields.ToHashSet();
        if (known.Contains("Password"))
        {
            known.Add(ISigningSession.Field);
            known.Add(ISigningSession.CodeField);
        }

        return
        [
            .. outcome
                .Refusals.Select(r => new FieldFault(
                    r.Field is not null && known.Contains(r.Field) ? $"{form}.{r.Field}" : "",
                    r.Source is null ? r.Sentence : $"{r.Sentence} (Source: {r.Source}.)"
                ))
                .Distinct(),
        ];
    }

    /// <summary>The same for a form whose controls are the properties of its type.</summary>
    public static IReadOnlyList<FieldFault> Of<TForm>(Outcome outcome, string form = "In") =>
        Of(outcome, form, typeof(TForm).GetProperties().Select(p => p.Name));
}
