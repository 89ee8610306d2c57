using WeldTrace.Domain.Ledger;

namespace WeldTrace.Verify;

/// <summary>Checks that every entry stands in the tree of the signed checkpoint.</summary>
internal static class LedgerCheck
{
    /// <returns>The checkpoint, if it is signed and readable.</returns>
    public static Checkpoint? Run(
        BundleContents contents,
        bool checkpointIsSigned,
        ProblemList problems
    )
    {
        var checkpoint = Read(
            contents,
            BundlePaths.Checkpoint,
            Checkpoint.FromCanonicalBytes,
            problems
        );
        var proofs = Read(
            contents,
            BundlePaths.Proofs,
            InclusionProofs.FromCanonicalBytes,
            problems
        );
        if (checkpoint is null || proofs is null || !checkpointIsSigned)
        {
            problems.Notes.Add(
                "No inclusion proof was checked: the checkpoint or the proofs fail."
            );
            return null;
        }
        if (proofs.TreeSize != checkpoint.TreeSize)
        {
            problems.Add(
                ProblemKind.Proof,
                BundlePaths.Proofs,
                $"The proofs are for {proofs.TreeSize} entries, the checkpoint for {checkpoint.TreeSize}."
            );
        }
        Prove(contents.Ledger, checkpoint, proofs, problems);
        return checkpoint;
    }

    private static void Prove(
        LedgerFacts ledger,
        Checkpoint checkpoint,
        InclusionProofs proofs,
        ProblemList problems
    )
    {
        var root = checkpoint.Root();
        var paths = proofs.Proofs.ToDictionary(proof => proof.Number, proof => proof.Path);
        foreach (var (number, leafHash) in ledger.LeafHashes.OrderBy(leaf => leaf.Key))
        {
            var path = paths.GetValueOrDefault(number);
            if (path is null)
            {
                problems.Add(
                    ProblemKind.Proof,
                    BundlePaths.Entry(number),
                    "ledger/proofs.json has no proof for this entry."
                );
            }
            else if (
                !MerkleVerification.Inclusion(leafHash, number, checkpoint.TreeSize, path, root)
            )
            {
                problems.Add(
                    ProblemKind.Proof,
                    BundlePaths.Entry(number),
                    "The proof does not lead from this entry to the signed root."
                );
            }
        }
        foreach (var number in paths.Keys.Where(number => !ledger.LeafHashes.ContainsKey(number)))
        {
            NameAbsent(number, problems);
        }
    }

    private static void NameAbsent(long number, ProblemList problems)
    {
        var path = BundlePaths.Entry(number);
        if (!problems.IsDamaged(path))
        {
            problems.Add(
                ProblemKind.Missing,
                path,
                "ledger/proofs.json proves this entry, but the bundle does not hold it."
            );
        }
    }

    private static T? Read<T>(
        BundleContents contents,
        string path,
        Func<ReadOnlyMemory<byte>, T> read,
        ProblemList problems
    )
        where T : class
    {
        if (contents.Document(path) is not { } bytes)
        {
            return null;
        }
        try
        {
            return read(bytes);
        }
        catch (FormatException error)
        {
            problems.Add(ProblemKind.Unreadable, path, error.Message);
            return null;
        }
    }
}
