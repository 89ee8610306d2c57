using WeldTrace.Domain.Records;

namespace WeldTrace.Web.Demo;

/// <summary>Who acts in the demonstration.</summary>
internal sealed record DemoCast(
    Actor Engineer,
    Actor Operator,
    Actor Inspector,
    Actor QualityManager,
    Actor Administrator
);
