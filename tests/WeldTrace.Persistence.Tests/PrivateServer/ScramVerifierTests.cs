using System.Security.Cryptography;
using System.Text;
using WeldTrace.Persistence.Roles;
using Xunit;

namespace WeldTrace.Persistence.Tests.PrivateServer;

public sealed class ScramVerifierTests
{
    [Fact]
    public void Create_ExampleOfRfc7677_GivesItsServerSignature()
    {
        // RFC 7677 section 3: user "user", password "pencil".
        const string exchange =
            "n=user,r=rOprNGfwEbeRWgbNEkqO,r=rOprNGfwEbeRWgbNEkqO%hvYDpWUa2RaTCAfuxFIlj)hNlF$k0,"
            + "s=W22ZaJ0SNY7soEsUEjb6gQ==,i=4096,c=biws,"
            + "r=rOprNGfwEbeRWgbNEkqO%hvYDpWUa2RaTCAfuxFIlj)hNlF$k0";

        var verifier = ScramVerifier.Create(
            "pencil",
            Convert.FromBase64String("W22ZaJ0SNY7soEsUEjb6gQ==")
        );

        Assert.StartsWith(
            "SCRAM-SHA-256$4096:W22ZaJ0SNY7soEsUEjb6gQ==$",
            verifier,
            StringComparison.Ordinal
        );
        var serverKey = Convert.FromBase64String(verifier.Split(':')[^1]);
        Assert.Equal(
            "6rriTRBi23WpRR/wtup+mMhUZUn/dB5nLTJRsjl95G4=",
            Convert.ToBase64String(
                HMACSHA256.HashData(serverKey, Encoding.ASCII.GetBytes(exchange))
            )
        );
    }
}
