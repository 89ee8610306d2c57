using System.Globalization;

namespace WeldTrace.Documents.Bundle;

/// <summary>The text, in light Markdown, that tells a stranger how to check the bundle.</summary>
internal static class Instructions
{
    public static string For(HistoryBundleInput input, string fingerprint) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            # History bundle

            ```text
            Vessel       {{input.VesselSerial}}
            Site         {{input.SiteName}}
            Made at      {{input.MadeAt.ToUniversalTime():yyyy-MM-dd HH:mm:ss}} UTC
            Site's key   {{fingerprint}}
            ```

            The key is given as the SHA-256 of the public key. Ask the site for it by telephone or letter
            and compare: a forger could put another key, and another text, into a forged bundle.


            """
        ) + Text;

    // The commands are run by a test as they stand here.
    private const string Text = """
        ## What is in it

        | file | what |
        | --- | --- |
        | `traveler.pdf` | the printed record of the vessel |
        | `history.pdf` | the history book: everything on record, with contents |
        | `history.epcis.jsonld` | what happened to the vessel, as events of GS1 EPCIS 2.0 with private names |
        | `records.prov.json` | which version came from which, and by whom, as W3C PROV-JSON |
        | `compliance.json`, `compliance.csv` | what published documents ask of the vessel, in our own words, and the records that show it, once for programs and once for people; `history.pdf` has the same |
        | `records/` | the newest version of each record, as JSON |
        | `records.schema.json` | what those files hold: a JSON Schema, draft 2020-12, with a definition per kind; any validator checks `records/<kind>/<id>.json` against `$defs/<kind>` |
        | `bundle.schema.json` | the same for `manifest.json`, `compliance.json` and the files of `ledger/`: `$defs/manifest`, `compliance`, `entry`, `checkpoint` and `proofs` |
        | `ledger/<number>.json` | every change of those records: who, when, what, why |
        | `ledger/proofs.json` | proof that each entry stands in the site's ledger (RFC 9162) |
        | `ledger/checkpoint.json` | size and root hash of the site's ledger; its signature is `ledger/checkpoint.sig` |
        | `logs/` | process logs of the weld runs, as CSV |
        | `attachments/` | photographs and certificates, named by their SHA-256 |
        | `site-key.pem` | the site's public key |
        | `manifest.json` | every file above with its length and SHA-256; its signature is `manifest.sig` |

        In the two files for other systems and in `compliance.json` `urn:uuid:<id>` is the record `records/<kind>/<id>.json` or a person,
        `#v3` its third version and `#act3` the act that made it: the ledger entry with that `recordId` and
        `recordVersion`. `ni:///sha-256;` stands before the SHA-256 of a file of the bundle, in base64url. An event that
        was wrong is told twice: as it was told at first, and again under the same name with an `errorDeclaration`. So is a
        decision that another one replaced; its reason is then `weld:decidedAgain`.

        ## Check everything with one command

            dotnet run --project src/WeldTrace.Verify -- <bundle.zip> --key <fingerprint>

        in a copy of the program's source, with the fingerprint that the site told you, not the one above.
        It needs no server and no database. It prints "verified", or names what was changed, removed or added.

        ## Check by hand, with common tools

        Unpack the bundle into an empty folder and run these commands there, in a shell of Linux or
        another Unix. They need OpenSSL, the usual small tools and, for the last step, Python 3.

        ### 1. The key is the site's own

        Compare the result with the fingerprint you were told:

        ```sh
        openssl pkey -pubin -in site-key.pem -outform DER | sha256sum
        ```

        ### 2. The site signed the manifest and the checkpoint

        This prints "Verified OK" twice:

        ```sh
        openssl dgst -sha256 -verify site-key.pem -signature manifest.sig manifest.json
        openssl dgst -sha256 -verify site-key.pem -signature ledger/checkpoint.sig ledger/checkpoint.json
        ```

        ### 3. Every file is as it was

        Each line ends with "OK":

        ```sh
        grep -o '"path":"[^"]*","sha256":"[^"]*"' manifest.json | sed 's/"path":"\(.*\)","sha256":"\(.*\)"/\2  \1/' | sha256sum --check --strict
        ```

        ### 4. No file was added

        This lists nothing but `./manifest.json` and `./manifest.sig`:

        ```sh
        find . -type f | while read -r f; do grep -qF "\"path\":\"${f#./}\"" manifest.json || echo "$f"; done
        ```

        ### 5. Every entry stands in the signed ledger, and every record is what its newest entry says

        An entry's leaf is the SHA-256 of a zero byte and its bytes; its index is its number; its proof
        leads to the root by RFC 9162, section 2.1.3.2. This prints only how many there are:

        ```sh
        python3 - <<'END'
        import glob, hashlib, json

        def sha256(data):
            return hashlib.sha256(data).digest()

        checkpoint = json.load(open("ledger/checkpoint.json", encoding="utf-8"))
        proofs = json.load(open("ledger/proofs.json", encoding="utf-8"))["proofs"]
        paths = {proof["number"]: proof["path"] for proof in proofs}
        newest, proven, alike = {}, 0, 0

        for file in sorted(glob.glob("ledger/[0-9]*.json"), key=lambda file: (len(file), file)):
            data = open(file, "rb").read()
            entry = json.loads(data)
            node, index, last = sha256(b"\0" + data), entry["number"], checkpoint["treeSize"] - 1
            good = index <= last and index in paths
            for step in map(bytes.fromhex, paths.get(index, [])):
                good = good and last > 0
                if index % 2 == 1 or index == last:
                    node = sha256(b"\1" + step + node)
                    while index % 2 == 0 and index > 0:
                        index, last = index // 2, last // 2
                else:
                    node = sha256(b"\1" + node + step)
                index, last = index // 2, last // 2
            if good and last == 0 and node.hex() == checkpoint["root"]:
                proven += 1
            else:
                print("NOT in the signed ledger:", file)
            newest["records/%s/%s.json" % (entry["recordKind"], entry["recordId"])] = data

        for file in sorted(glob.glob("records/*/*.json")):
            content = b'"content":' + open(file, "rb").read() + b',"format":"weldtrace-entry-1"'
            if content in newest.get(file, b""):
                alike += 1
            else:
                print("NOT what its newest entry says:", file)

        print(proven, "entries in the signed ledger,", alike, "records as their newest entry says")
        END
        ```

        """;
}
