namespace WeldTrace.Domain.People;

/// <summary>What a person may do at this site.</summary>
public enum Role
{
    /// <summary>Writes designs and procedures.</summary>
    Engineer,

    /// <summary>Welds and logs runs.</summary>
    Operator,

    /// <summary>Tests, examines, disposes of findings and signs.</summary>
    Inspector,

    /// <summary>Reads everything, changes nothing.</summary>
    Auditor,

    /// <summary>Answers for people, equipment, findings and releases.</summary>
    QualityManager,

    /// <summary>Manages accounts and the site's settings.</summary>
    Administrator,
}
