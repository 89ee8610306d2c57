using WeldTrace.Web.Features.People.Import;
using WeldTrace.Web.Features.People.List;

namespace WeldTrace.Web.Features.People;

public static class Registration
{
    public static IServiceCollection AddPeople(this IServiceCollection services) =>
        services
            .AddScoped<PeopleHandler>()
            .AddScoped<PersonMeansHandler>()
            .AddScoped<BadgeHandler>()
            .AddScoped<ImportPeopleHandler>()
            .AddScoped<PeopleListReader>();

    public static void MapPeople(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPeopleCsv();
        endpoints.MapBadges();
    }
}
