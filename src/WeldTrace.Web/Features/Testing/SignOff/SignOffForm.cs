namespace WeldTrace.Web.Features.Testing.SignOff;

public sealed class SignOffForm
{
    public Guid Id { get; set; }

    // A form sent without any of them arrives as null.
    public ExaminationForm Examination
    {
        get;
        set => field = value ?? new();
    } = new();

    public string? Remark { get; set; }

    public string? Password { get; set; }

    /// <summary>Names of all controls, rows included.</summary>
    public IEnumerable<string> FieldNames =>
        [
            .. typeof(SignOffForm).GetProperties().Select(p => p.Name),
            .. typeof(ExaminationForm).GetProperties().Select(p => ExaminationForm.Name(p.Name)),
            .. Examination.Flaws.SelectMany(
                (_, i) =>
                    typeof(FlawRow)
                        .GetProperties()
                        .Select(p =>
                            ExaminationForm.Name(
                                FormattableString.Invariant(
                                    $"{nameof(Examination.Flaws)}[{i}].{p.Name}"
                                )
                            )
                        )
            ),
        ];
}
