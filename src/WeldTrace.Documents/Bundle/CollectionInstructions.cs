using System.Globalization;
using WeldTrace.Domain.Ledger;

namespace WeldTrace.Documents.Bundle;

/// <summary>The text, in light Markdown, that tells a stranger how to check a collection of bundles.</summary>
internal static class CollectionInstructions
{
    public static string For(CollectionContents contents, string fingerprint) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            # Histories of several vessels

            ```text
            What         {{contents.Title}}
            Site         {{contents.SiteName}}
            Made at      {{contents.MadeAt.ToUniversalTime():yyyy-MM-dd HH:mm:ss}} UTC
            Vessels      {{contents.Bundles.Count}}
            Site's key   {{fingerprint}}
            ```

            The key is given as the SHA-256 of the public key. Ask the site for it by telephone or letter
            and compare: a forger could put another key, and another text, into a forged collection.


            """
        )
        + Text
        + string.Concat(contents.Bundles.Select(b => $"    {b.File.Sha256}  {b.File.Path}\n"));

    // The commands are run by a test as they stand here.
    private const string Text = """
        ## What is in it

        | file | what |
        | --- | --- |
        | `bundles/` | the history bundle of each vessel, a ZIP of its own that can be checked and passed on by itself |
        | `site-key.pem` | the site's public key |
        | `bundle.schema.json` | what `contents.json` holds: a JSON Schema, draft 2020-12, of which `$defs/contents` is its form |
        | `contents.json` | every file above with its length and SHA-256, so that none can be left out or put in unseen; its signature is `contents.sig` |

        ## Check everything with one command

            dotnet run --project src/WeldTrace.Verify -- <collection.zip> --key <fingerprint>

        in a copy of the program's source, with the fingerprint that the site told you, not the one above.
        It needs no server and no database. It says of each vessel whether its history is verified.

        ## Check by hand, with common tools

        Unpack the collection into an empty folder and run these commands there, in a shell of Linux or
        another Unix. They need OpenSSL and the usual small tools.

        ### 1. The key is the site's own

        Compare the result with the fingerprint you were told:

        ```sh
        openssl pkey -pubin -in site-key.pem -outform DER | sha256sum
        ```

        ### 2. The site signed the list

        This prints "Verified OK":

        ```sh
        openssl dgst -sha256 -verify site-key.pem -signature contents.sig contents.json
        ```

        ### 3. Every file is as it was

        Each line ends with "OK":

        ```sh
        grep -o '"path":"[^"]*","sha256":"[^"]*"' contents.json | sed 's/"path":"\(.*\)","sha256":"\(.*\)"/\2  \1/' | sha256sum --check --strict
        ```

        ### 4. No file was added

        This lists nothing but `./contents.json` and `./contents.sig`:

        ```sh
        find . -type f | while read -r f; do grep -qF "\"path\":\"${f#./}\"" contents.json || echo "$f"; done
        ```

        ### 5. Each history

        Unpack each ZIP of `bundles/` into an empty folder of its own and follow the `VERIFY.md` in it.

        ## The bundles with their SHA-256


        """;
}
