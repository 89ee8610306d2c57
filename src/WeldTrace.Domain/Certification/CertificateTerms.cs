namespace WeldTrace.Domain.Certification;

/// <summary>What a certificate attests.</summary>
public enum CertificateKind
{
    /// <summary>Qualification of a friction stir welding operator (ISO 25239-3; ISO 14732 as the better documented sibling).</summary>
    WeldingOperator,

    /// <summary>Qualification for a method of examination or test (ISO 9712 or equivalent, ISO 25239-5:2020 4.3.2).</summary>
    Examiner,

    /// <summary>Any other training that the site keeps on file.</summary>
    Training,
}

/// <summary>How an operator's qualification is kept up; fixed when the certificate is issued (ISO 14732:2025 6.1, 6.3, second-hand).</summary>
public enum Revalidation
{
    /// <summary>A new test weld when it expires.</summary>
    NewTest,

    /// <summary>Production welds of the last six months, tested.</summary>
    TestedProductionWelds,

    /// <summary>Open-ended under a certified quality system; not for PED categories II to IV.</summary>
    Continuous,
}

/// <summary>Methods of examination and test that need a qualified person.</summary>
public enum ExaminationMethod
{
    /// <summary>Visual, ISO 17637.</summary>
    Visual,

    /// <summary>Penetrant, ISO 3452-1.</summary>
    Penetrant,

    /// <summary>Ultrasonic, ISO 17640.</summary>
    Ultrasonic,

    /// <summary>Radiographic, ISO 17636.</summary>
    Radiographic,

    /// <summary>Leak testing, ISO 20485 and EN 1779.</summary>
    Leak,

    /// <summary>Pressure testing.</summary>
    Pressure,

    /// <summary>Macroscopic and microscopic examination, ISO 17639.</summary>
    Macroscopic,

    /// <summary>Tensile, bend and hardness testing.</summary>
    Mechanical,
}

/// <summary>How the tool's probe is held, as far as it limits an operator's qualification.</summary>
public enum ToolType
{
    /// <summary>Probe and shoulder in one piece or fixed together.</summary>
    FixedProbe,

    /// <summary>Probe length set during the weld.</summary>
    AdjustableProbe,

    /// <summary>Two shoulders.</summary>
    Bobbin,
}

/// <summary>Words for what a certificate says.</summary>
public static class CertificateWords
{
    /// <summary>The word for a kind of certificate.</summary>
    public static string Of(CertificateKind kind) =>
        kind switch
        {
            CertificateKind.WeldingOperator => "FSW operator",
            CertificateKind.Examiner => "examination",
            CertificateKind.Training => "training",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Unknown kind."),
        };

    /// <summary>The words for a way of keeping up a qualification.</summary>
    public static string Of(Revalidation revalidation) =>
        revalidation switch
        {
            Revalidation.NewTest => "new test weld",
            Revalidation.TestedProductionWelds => "tested production welds",
            Revalidation.Continuous => "continuous",
            _ => throw new ArgumentOutOfRangeException(
                nameof(revalidation),
                revalidation,
                "Unknown way."
            ),
        };

    /// <summary>The word for a method.</summary>
    public static string Of(ExaminationMethod method) =>
        method switch
        {
            ExaminationMethod.Visual => "visual",
            ExaminationMethod.Penetrant => "penetrant",
            ExaminationMethod.Ultrasonic => "ultrasonic",
            ExaminationMethod.Radiographic => "radiographic",
            ExaminationMethod.Leak => "leak",
            ExaminationMethod.Pressure => "pressure",
            ExaminationMethod.Macroscopic => "macroscopic",
            ExaminationMethod.Mechanical => "mechanical",
            _ => throw new ArgumentOutOfRangeException(nameof(method), method, "Unknown method."),
        };

    /// <summary>The words for a type of tool.</summary>
    public static string Of(ToolType type) =>
        type switch
        {
            ToolType.FixedProbe => "fixed probe",
            ToolType.AdjustableProbe => "adjustable probe",
            ToolType.Bobbin => "bobbin",
            _ => throw new ArgumentOutOfRangeException(nameof(type), type, "Unknown type."),
        };
}
