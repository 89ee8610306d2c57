namespace WeldTrace.Web.Tests.Access;

/// <summary>What an address answers to a plain request.</summary>
/// <param name="Pattern">Address, with the names of what varies.</param>
/// <param name="Answers">Of nobody, then of each role.</param>
internal sealed record AccessRow(string Pattern, IReadOnlyList<string> Answers);

/// <summary>
/// Who may open what. <c>yes</c>: the page or file, or the way to the one that is right now. <c>in</c>: first sign in.
/// <c>no</c>: not for that role. A number: the answer of an address that a plain request doesn't fit.
/// What a person may do on a page is another table: <see cref="FormAccessTests"/>.
/// </summary>
internal static class AccessTable
{
    public const string NotAllowed = "/not-allowed";

    private const string Text = """
        # address                                             nobody  engineer  operator  inspector  auditor  quality  admin

        # Signed in or not
        /sign-in                                              yes     yes       yes       yes        yes      yes      yes
        /sign-in/challenge                                    yes     yes       yes       yes        yes      yes      yes
        /sign-in/tablet                                       yes     yes       yes       yes        yes      yes      yes
        /first-run                                            in      in        in        in         in       in       in
        /health                                               yes     yes       yes       yes        yes      yes      yes
        /failure                                              yes     yes       yes       yes        yes      yes      yes
        /not-allowed                                          yes     yes       yes       yes        yes      yes      yes
        /not-found                                            yes     yes       yes       yes        yes      yes      yes

        # One's own
        /                                                     in      yes       yes       yes        yes      yes      yes
        /me                                                   in      yes       yes       yes        yes      yes      yes
        /me/password                                          in      yes       yes       yes        yes      yes      yes
        /me/second-factor                                     in      yes       yes       yes        yes      yes      yes
        /me/passkeys                                          in      yes       yes       yes        yes      yes      yes
        /me/sessions                                          in      yes       yes       yes        yes      yes      yes
        /me/pin                                               in      yes       yes       yes        yes      yes      yes
        /me/passkeys/new                                      in      yes       yes       yes        yes      yes      yes
        /me/passkeys/challenge                                in      yes       yes       yes        yes      yes      yes
        /open                                                 in      yes       yes       yes        yes      yes      yes
        /labels                                               in      yes       yes       yes        yes      yes      yes
        /labels/sheet.pdf                                     in      yes       yes       yes        yes      yes      yes

        # Vessels
        /vessels                                              in      yes       yes       yes        yes      yes      yes
        /vessels.csv                                          in      yes       yes       yes        yes      yes      yes
        /trace                                                in      yes       yes       yes        yes      yes      yes
        /trace.csv                                            in      yes       yes       yes        yes      yes      yes
        /trace/recall.pdf                                     in      yes       yes       yes        yes      yes      yes
        /histories                                            in      yes       yes       yes        yes      yes      yes
        /histories/new                                        in      yes       yes       yes        yes      yes      yes
        /histories/{Id}                                       in      no        no        no         yes      yes      yes
        /histories/{id}/state                                 in      no        no        no         yes      yes      yes
        /histories/{id}/histories.zip                         in      no        no        no         yes      yes      yes
        /archive                                              in      yes       yes       yes        yes      yes      yes
        /archive/{id}/history.zip                             in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/archive                             in      yes       yes       yes        yes      yes      yes
        /vessels/new                                          in      yes       no        no         no       no       no
        /vessels/{Serial}                                     in      yes       yes       yes        yes      yes      yes
        /vessels/{serial}/traveler.pdf                        in      yes       yes       yes        yes      yes      yes
        /vessels/{serial}/certificate.pdf                     in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/genealogy                           in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/compliance                          in      yes       yes       yes        yes      yes      yes
        /vessels/{serial}/compliance.csv                      in      yes       yes       yes        yes      yes      yes
        /vessels/{serial}/history.pdf                         in      yes       yes       yes        yes      yes      yes
        /vessels/{serial}/history.zip                         in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/steps/{Sequence}                    in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/prepare/{JointCode}                 in      yes       yes       yes        no       yes      no
        /vessels/{Serial}/weld/{Sequence}                     in      yes       yes       yes        no       yes      no
        /vessels/{Serial}/repair/{Number}                     in      404       404       404        no       404      no
        /vessels/{Serial}/weld/{Sequence}/concession/{RuleId} in      yes       no        no         no       yes      no
        /concessions                                          in      yes       yes       yes        yes      yes      yes
        /concessions.csv                                      in      yes       yes       yes        yes      yes      yes
        /concessions/{Id}                                     in      yes       yes       yes        yes      yes      yes
        /vessels/{Serial}/leak/{Sequence}                     in      no        no        yes        no       no       no
        /vessels/{Serial}/pressure/{Sequence}                 in      no        no        yes        no       no       no
        /vessels/{Serial}/section/{Sequence}                  in      no        no        yes        no       no       no
        /vessels/{Serial}/sign-off/{Sequence}                 in      yes       yes       yes        no       yes      no
        /vessels/{Serial}/ship                                in      yes       no        yes        no       yes      no
        /vessels/{Serial}/findings/new                        in      yes       yes       yes        no       yes      no
        /designs                                              in      yes       yes       yes        yes      yes      yes
        /designs.csv                                          in      yes       yes       yes        yes      yes      yes
        /designs/new                                          in      yes       no        no         no       no       no
        /designs/{Id}                                         in      yes       yes       yes        yes      yes      yes
        /designs/{Id}/edit                                    in      yes       no        no         no       no       no

        # Production lots
        /lots                                                 in      yes       yes       yes        yes      yes      yes
        /lots.csv                                             in      yes       yes       yes        yes      yes      yes
        /lots/new                                             in      yes       no        no         no       yes      no
        /lots/{Id}                                            in      yes       yes       yes        yes      yes      yes

        # Runs
        /procedures/runs                                      in      yes       yes       yes        yes      yes      yes
        /procedures/runs/overlay                              in      yes       yes       yes        yes      yes      yes
        /procedures/runs/overlay/samples                      in      yes       yes       yes        yes      yes      yes
        /runs/{Id}                                            in      yes       yes       yes        yes      yes      yes
        /runs/{Id}/signals/{Parameter}                        in      yes       yes       yes        yes      yes      yes
        /runs/{Id}/end                                        in      no        yes       no         no       no       no
        /runs/{Id}/interrupt                                  in      no        yes       no         no       no       no
        /runs/{Id}/phases                                     in      yes       no        no         no       no       no
        /runs/{Id}/log                                        in      yes       yes       yes        no       yes      no
        /runs/{id}/log/file                                   in      404       404       404        404      404      404
        /runs/{id}/log/arrived/{arrival}                      in      404       404       404        404      404      404
        /runs/{Id}/log/{Upload}                               in      yes       yes       yes        no       yes      no
        /runs/{Id}/sign                                       in      no        yes       no         no       no       no
        /runs/{id}/log.csv                                    in      yes       yes       yes        yes      yes      yes
        /runs/{id}/log/original                               in      yes       yes       yes        yes      yes      yes
        /runs/{id}/samples                                    in      yes       yes       yes        yes      yes      yes

        # Tests and findings
        /tests                                                in      yes       yes       yes        yes      yes      yes
        /tests.csv                                            in      yes       yes       yes        yes      yes      yes
        /tests/laboratory                                     in      yes       yes       yes        yes      yes      yes
        /tests/laboratory.csv                                 in      yes       yes       yes        yes      yes      yes
        /tests/laboratory/new/{Kind}                          in      no        no        yes        no       no       no
        /tests/laboratory/{Id}                                in      yes       yes       yes        yes      yes      yes
        /tests/laboratory/{id}/report.pdf                     in      yes       yes       yes        yes      yes      yes
        /tests/leak/{Id}                                      in      yes       yes       yes        yes      yes      yes
        /tests/pressure/{Id}                                  in      yes       yes       yes        yes      yes      yes
        /tests/leak/{id}/report.pdf                           in      yes       yes       yes        yes      yes      yes
        /tests/pressure/{id}/report.pdf                       in      yes       yes       yes        yes      yes      yes
        /tests/sections/{Id}                                  in      yes       yes       yes        yes      yes      yes
        /tests/sections/{Id}/measure                          in      no        no        yes        no       no       no
        /tests/sections/{id}/picture.jpg                      in      yes       yes       yes        yes      yes      yes
        /tests/sections/{id}/tiles/{level}/{x}/{y}            in      yes       yes       yes        yes      yes      yes
        /tests/examinations/{id}/report.pdf                   in      yes       yes       yes        yes      yes      yes
        /tests/sections/{id}/report.pdf                       in      yes       yes       yes        yes      yes      yes
        /tests/production                                     in      yes       yes       yes        yes      yes      yes
        /tests/production.csv                                 in      yes       yes       yes        yes      yes      yes
        /tests/production/new                                 in      no        no        yes        no       no       no
        /findings                                             in      yes       yes       yes        yes      yes      yes
        /findings.csv                                         in      yes       yes       yes        yes      yes      yes
        /findings/{Id}                                        in      yes       yes       yes        yes      yes      yes
        /findings/figures                                     in      yes       yes       yes        yes      yes      yes
        /findings/{id}/report.pdf                             in      yes       yes       yes        yes      yes      yes
        /findings/{Id}/containment                            in      yes       yes       yes        yes      yes      yes
        /findings/{id}/containment.csv                        in      yes       yes       yes        yes      yes      yes
        /attachments/{sha256}                                 in      yes       yes       yes        yes      yes      yes

        # Procedures
        /procedures                                           in      yes       yes       yes        yes      yes      yes
        /procedures.csv                                       in      yes       yes       yes        yes      yes      yes
        /procedures/new                                       in      yes       no        no         no       no       no
        /procedures/figures                                   in      404       404       404        404      404      404
        /procedures/{Id}                                      in      yes       yes       yes        yes      yes      yes
        /procedures/{Id}/edit                                 in      yes       no        no         no       no       no
        /procedures/{Id}/qualify                              in      yes       no        no         no       no       no
        /procedures/{Id}/against/{Other}                      in      yes       yes       yes        yes      yes      yes
        /procedures/{id}/sheet.pdf                            in      yes       yes       yes        yes      yes      yes
        /procedures/limits                                    in      yes       yes       yes        yes      yes      yes
        /procedures/limits.csv                                in      yes       yes       yes        yes      yes      yes
        /procedures/limits/new                                in      no        no        no         no       yes      no
        /procedures/limits/{Id}                               in      yes       yes       yes        yes      yes      yes
        /procedures/limits/{Id}/revise                        in      no        no        no         no       yes      no
        /procedures/qualifications                            in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications.csv                        in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications/{Id}                       in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications/{id}/record.pdf            in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications/{Id}/pieces/{PieceMark}    in      yes       yes       yes        no       yes      no
        /procedures/qualifications/pieces/{Id}                in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications/pieces/{id}/log.csv        in      yes       yes       yes        yes      yes      yes
        /procedures/qualifications/{Id}/results/{Planned}     in      no        no        yes        no       no       no
        /procedures/qualifications/results/{Id}               in      yes       yes       yes        yes      yes      yes

        # Desk
        /desk                                                 in      yes       yes       yes        yes      yes      yes
        /desk/pass-layout                                     in      yes       yes       yes        yes      yes      yes
        /desk/window-and-heat                                 in      yes       yes       yes        yes      yes      yes
        /desk/vessel                                          in      yes       yes       yes        yes      yes      yes
        /desk/leak-test                                       in      yes       yes       yes        yes      yes      yes
        /desk/test-safety                                     in      yes       yes       yes        yes      yes      yes
        /desk/tool-life                                       in      yes       yes       yes        yes      yes      yes
        /desk/sample                                          in      yes       yes       yes        yes      yes      yes
        /desk/{Name}/worked-out                               in      yes       yes       yes        yes      yes      yes
        /desk/{name}/sheet.pdf                                in      yes       yes       yes        yes      yes      yes
        /worked-out/{Kind}/{Id}/{Key}                         in      yes       yes       yes        yes      yes      yes

        # Tools
        /tools                                                in      yes       yes       yes        yes      yes      yes
        /tools.csv                                            in      yes       yes       yes        yes      yes      yes
        /tools/new                                            in      yes       no        yes        no       yes      no
        /tools/import                                         in      yes       no        yes        no       yes      no
        /tools/{Id}                                           in      yes       yes       yes        yes      yes      yes
        /tools/{id}/card.pdf                                  in      yes       yes       yes        yes      yes      yes
        /tools/{Id}/inspect                                   in      yes       yes       yes        no       yes      no
        /tools/{Id}/parts                                     in      yes       yes       yes        no       yes      no
        /tools/designs                                        in      yes       yes       yes        yes      yes      yes
        /tools/designs.csv                                    in      yes       yes       yes        yes      yes      yes
        /tools/designs/new                                    in      yes       no        no         no       no       no
        /tools/designs/{Id}                                   in      yes       yes       yes        yes      yes      yes

        # Equipment and material
        /equipment                                            in      yes       yes       yes        yes      yes      yes
        /equipment/machines.csv                               in      yes       yes       yes        yes      yes      yes
        /equipment/machines/new                               in      yes       no        yes        no       yes      no
        /equipment/machines/{Id}                              in      yes       yes       yes        yes      yes      yes
        /equipment/machines/{Id}/capability                   in      yes       no        no         no       yes      no
        /equipment/machines/{Id}/report                       in      yes       yes       yes        yes      yes      yes
        /equipment/machines/{Id}/test-weld                    in      yes       no        yes        no       yes      no
        /equipment/machines/{Id}/maintenance                  in      yes       yes       yes        no       yes      no
        /equipment/machines/{Id}/push                         in      no        no        no         no       yes      yes
        /equipment/machines/{id}/logs                         in      404       404       404        404      404      404
        /equipment/machines/{id}/logs/{arrival}               401     401       401       401        401      401      401
        /equipment/machines/{id}/logs/{arrival}/pieces        in      404       404       404        404      404      404
        /equipment/instruments                                in      yes       yes       yes        yes      yes      yes
        /equipment/instruments.csv                            in      yes       yes       yes        yes      yes      yes
        /equipment/instruments/import                         in      yes       no        yes        no       yes      no
        /equipment/instruments/new                            in      yes       no        yes        no       yes      no
        /equipment/instruments/{Id}                           in      yes       yes       yes        yes      yes      yes
        /equipment/material                                   in      yes       yes       yes        yes      yes      yes
        /equipment/material.csv                               in      yes       yes       yes        yes      yes      yes
        /equipment/material/new                               in      yes       no        yes        no       yes      no
        /equipment/material/import                            in      yes       no        yes        no       yes      no
        /equipment/material/{Id}                              in      yes       yes       yes        yes      yes      yes
        /equipment/components                                 in      yes       yes       yes        yes      yes      yes
        /equipment/components.csv                             in      yes       yes       yes        yes      yes      yes
        /equipment/components/new                             in      yes       yes       yes        no       yes      no
        /equipment/components/{Id}                            in      yes       yes       yes        yes      yes      yes
        /equipment/heat-treatments                            in      yes       yes       yes        yes      yes      yes
        /equipment/heat-treatments.csv                        in      yes       yes       yes        yes      yes      yes
        /equipment/heat-treatments/new                        in      yes       yes       yes        no       yes      no
        /equipment/heat-treatments/{Id}                       in      yes       yes       yes        yes      yes      yes

        # People, ledger and site
        /site/systems                                         in      no        no        no         no       yes      yes
        /site/tablets                                         in      no        no        no         no       yes      yes
        /api/openapi.json                                     in      yes       yes       yes        yes      yes      yes
        /api/vessels/{serial}                                 401     401       401       401        401      401      401
        /api/vessels/{serial}/history                         401     401       401       401        401      401      401
        /api/vessels/{serial}/pressure/{sequence}/stages/{stage}  in      404       404       404        404      404      404
        /api/vessels/{serial}/leak/{sequence}/readings        in      404       404       404        404      404      404
        /people                                               in      yes       yes       yes        yes      yes      yes
        /people.csv                                           in      yes       yes       yes        yes      yes      yes
        /people/new                                           in      no        no        no         no       yes      yes
        /people/import                                        in      no        no        no         no       yes      yes
        /people/{Id}                                          in      no        no        no         no       yes      yes
        /people/{id}/badge                                    in      404       404       404        404      404      404
        /people/certificates                                  in      yes       yes       yes        yes      yes      yes
        /people/certificates.csv                              in      yes       yes       yes        yes      yes      yes
        /people/certificates/new                              in      yes       no        no         no       yes      no
        /people/certificates/{Id}                             in      yes       yes       yes        yes      yes      yes
        /ledger                                               in      yes       yes       yes        yes      yes      yes
        /ledger.csv                                           in      yes       yes       yes        yes      yes      yes
        /ledger/check                                         in      yes       yes       yes        yes      yes      yes
        /ledger/check/state                                   in      yes       yes       yes        yes      yes      yes
        /ledger/checkpoints                                   in      yes       yes       yes        yes      yes      yes
        /ledger/checkpoints/{treeSize}/{file}                 in      yes       yes       yes        yes      yes      yes
        /ledger/{Number}                                      in      yes       yes       yes        yes      yes      yes
        /site                                                 in      no        no        no         no       no       yes
        /site/key                                             in      no        no        no         no       no       yes

        # What posts only, and the framework's own
        /sign-out                                             in      404       404       404        404      404      404
        /_blazor                                              401     400       400       400        400      400      400
        /_blazor/negotiate                                    401     405       405       405        405      405      405
        /_blazor/disconnect/                                  in      405       405       405        405      405      405
        /_blazor/initializers/                                in      yes       yes       yes        yes      yes      yes
        /_framework/opaque-redirect                           in      400       400       400        400      400      400
        {**path}                                              in      404       404       404        404      404      404
        """;

    public static IReadOnlyList<AccessRow> Rows { get; } =
    [
        .. Text.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Where(line => !line.StartsWith('#'))
            .Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(cells => new AccessRow(cells[0], cells[1..])),
    ];
}
