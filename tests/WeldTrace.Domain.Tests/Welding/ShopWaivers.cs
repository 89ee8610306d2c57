using WeldTrace.Domain.Concessions;
using WeldTrace.Domain.Equipment;
using WeldTrace.Domain.Welding;
using WeldTrace.TestSupport.Records;
using Xunit;

namespace WeldTrace.Domain.Tests.Welding;

/// <summary>
/// Certificates, the machine and concessions in a random history, and what a run needs of them, told again without asking the gate:
/// a valid certificate and an unlocked machine, or a concession of two signatures that no run has used.
/// </summary>
internal sealed class ShopWaivers(SampleShop shop)
{
    private readonly HashSet<(string Rule, int Step)> _granted = [];
    private int _validCertificates = 1;
    private bool _isLocked;

    /// <summary>Tries an act; false when it is none of these.</summary>
    public bool Try(string act)
    {
        switch (act)
        {
            case "Revoke":
                Revoke();
                break;
            case "Certify":
                Certify();
                break;
            case "Doubt":
                _isLocked |= Report(MachineEventKind.Doubt);
                break;
            case "Clear":
                _isLocked &= !shop
                    .Machine.Clear(
                        "Looked into it.",
                        SampleTime.Day,
                        SamplePeople.Engineer,
                        shop.Now
                    )
                    .IsAccepted;
                break;
            case "AskForWelder":
                Ask("F4");
                break;
            case "AskForMachine":
                Ask("F5");
                break;
            case "Grant":
                Decide(isGrant: true);
                break;
            case "Decline":
                Decide(isGrant: false);
                break;
            default:
                return false;
        }

        return true;
    }

    /// <summary>Asserts that the run that was just started may exist, and uses up what let it through.</summary>
    /// <returns>Number of rules that were waived for it.</returns>
    public int UseFor(WeldRun run)
    {
        var waived = 0;
        foreach (var (rule, isKept) in new[] { ("F4", _validCertificates > 0), ("F5", !_isLocked) })
        {
            if (!isKept)
            {
                Assert.Contains((rule, run.StepSequence), _granted);
                waived++;
            }

            _granted.Remove((rule, run.StepSequence));
        }

        return waived;
    }

    private void Revoke()
    {
        var certificate = shop.Certificates.FirstOrDefault(c =>
            c.PersonId == SamplePeople.Operator.PersonId && !c.IsRevoked
        );
        if (certificate is null)
        {
            return;
        }

        Accept.All(
            certificate.Revoke(
                [],
                "Weld with cavities.",
                SampleTime.Day,
                SamplePeople.QualityManager,
                shop.Now
            )
        );
        _validCertificates--;
    }

    private void Certify()
    {
        shop.Certificates.Add(SampleCertificates.Welder(SamplePeople.Welders[0]));
        _validCertificates++;
    }

    private bool Report(MachineEventKind kind) =>
        shop
            .Machine.Report(
                kind,
                SampleTime.Day,
                "Rattles",
                null,
                SampleTime.Day,
                SamplePeople.Operator,
                shop.Now
            )
            .IsAccepted;

    private void Ask(string rule)
    {
        if (shop.Vessel.NextStep is { Sequence: 10 or 20 } next)
        {
            var asked = Concession.Ask(
                shop.Facts(next.Sequence),
                rule,
                "The customer agrees.",
                SamplePeople.Engineer,
                shop.Now
            );
            if (asked.Value is { } concession)
            {
                shop.Concessions.Add(concession);
            }
        }
    }

    private void Decide(bool isGrant)
    {
        if (shop.Concessions.LastOrDefault(c => c.State == ConcessionState.Asked) is not { } asked)
        {
            return;
        }

        if (isGrant)
        {
            Accept.All(asked.Grant(SamplePeople.QualityManager, shop.Now));
            _granted.Add((asked.RuleId, asked.StepSequence));
        }
        else
        {
            Accept.All(asked.Decline("No.", SamplePeople.QualityManager, shop.Now));
        }
    }
}
