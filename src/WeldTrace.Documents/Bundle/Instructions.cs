using System.Globalization;

namespace WeldTrace.Documents.Bundle;

/// <summary>The text that tells a stranger how to check the bundle.</summary>
internal static class Instructions
{
    public static string For(HistoryBundleInput input, string fingerprint) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            HISTORY BUNDLE

            Vessel       {{input.VesselSerial}}
            Site         {{input.SiteName}}
            Made at      {{input.MadeAt.ToUniversalTime():yyyy-MM-dd HH:mm:ss}} UTC
            Site's key   {{fingerprint}}
                         (SHA-256 of the public key; ask the site for it by telephone or letter
                         and compare: a forger could put another key into a forged bundle)

            WHAT IS IN IT

            traveler.pdf            the printed record of the vessel
            history.pdf             the history book: everything on record, with contents
            records/                the newest version of each record, as JSON
            ledger/<number>.json    every change of those records: who, when, what, why
            ledger/proofs.json      proof that each entry stands in the site's ledger (RFC 9162)
            ledger/checkpoint.json  size and root hash of the site's ledger, with its signature
            logs/                   process logs of the weld runs, as CSV
            attachments/            photographs and certificates, named by their SHA-256
            manifest.json           every file above with its length and SHA-256, with its signature

            CHECK EVERYTHING WITH ONE COMMAND

                dotnet run --project src/WeldTrace.Verify -- <bundle.zip> --key <fingerprint>

            with the fingerprint that the site told you, not the one printed above: whoever forges a
            bundle also writes this text. The command needs no server and no database. It prints
            "verified", or names what was changed, removed or added.

            CHECK BY HAND, WITH COMMON TOOLS

            Unpack the bundle into an empty folder and run these commands there.

            1. The key is the site's own; compare the result with the fingerprint you were told:

                openssl pkey -pubin -in site-key.pem -outform DER | sha256sum

            2. The site signed the manifest and the checkpoint ("Verified OK" twice):

                openssl dgst -sha256 -verify site-key.pem -signature manifest.sig manifest.json
                openssl dgst -sha256 -verify site-key.pem -signature ledger/checkpoint.sig ledger/checkpoint.json

            3. Every file is as it was (each line ends with "OK"):

                grep -o '"path":"[^"]*","sha256":"[^"]*"' manifest.json | sed 's/"path":"\(.*\)","sha256":"\(.*\)"/\2  \1/' | sha256sum --check --strict

            4. No file was added; this lists nothing but ./manifest.json and ./manifest.sig:

                find . -type f | while read -r f; do grep -qF "\"path\":\"${f#./}\"" manifest.json || echo "$f"; done

            These checks cover every file. The proofs in ledger/proofs.json are checked by the one
            command above, or by any program that follows RFC 9162 section 2.1.3.2: the leaf is
            SHA-256 of a zero byte and the bytes of ledger/<number>.json, its index is <number>.

            """
        );
}
