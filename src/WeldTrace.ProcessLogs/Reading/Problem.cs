using static WeldTrace.ProcessLogs.LogProblemCode;

namespace WeldTrace.ProcessLogs.Reading;

/// <summary>The wording of problems.</summary>
internal static class Problem
{
    private const double BytesPerGigabyte = 1024 * 1024 * 1024;

    public static LogProblem Empty() =>
        new(
            EmptyFile,
            "The file is empty.",
            "Export the log again from the machine and check that the run was recorded."
        );

    public static LogProblem TooLarge(long limitBytes) =>
        new(
            LogProblemCode.TooLarge,
            string.Create(
                Invariant,
                $"The file is larger than {limitBytes / BytesPerGigabyte:0.###} GB, the largest log that is taken."
            ),
            "Export one run per file, or lower the recording rate."
        );

    public static LogProblem Binary(string content) =>
        new(
            BinaryContent,
            $"The file holds {content}, not a log in columns of text.",
            "Export the log as CSV or tab-separated text and upload that file."
        );

    public static LogProblem Damaged() =>
        new(
            DamagedArchive,
            "The packed file can't be unpacked to its end, or holds more than one archive.",
            "The copy was cut off or damaged; pack and copy the file again, or bring it unpacked."
        );

    public static LogProblem NoDataRows() =>
        new(
            LogProblemCode.NoDataRows,
            "No line of the file holds two or more numbers side by side.",
            "Check that the log was exported in columns, separated by comma, semicolon or tab."
        );

    public static LogProblem TooFewRows(long rows, int least) =>
        new(
            LogProblemCode.TooFewRows,
            string.Create(Invariant, $"The log holds {rows} rows; at least {least} are needed."),
            "Check that the whole run was recorded and exported."
        );

    public static LogProblem LineTooLong(long line) =>
        new(
            LogProblemCode.LineTooLong,
            string.Create(Invariant, $"Line {line} does not end within 256 kB."),
            "Check that the export separates rows by line ends."
        )
        {
            Line = line,
        };

    public static LogProblem FieldCount(long line, int found, int expected) =>
        new(
            WrongFieldCount,
            found == 0
                ? string.Create(Invariant, $"Line {line} is empty.")
                : string.Create(
                    Invariant,
                    $"Line {line} has {found} fields where {expected} are expected."
                ),
            "Correct the export, or record the run again; rows are never filled in."
        )
        {
            Line = line,
        };

    public static LogProblem Truncated(long line, string column, int found, int expected) =>
        new(
            TruncatedLine,
            string.Create(
                Invariant,
                $"The file ends in the middle of line {line}, in column '{column}': {found} of {expected} fields are there and the line does not end."
            ),
            "The copy was cut off; copy or export the file again."
        )
        {
            Line = line,
            Column = column,
        };

    public static LogProblem Mixed(long line, string? column, string text, char mark) =>
        new(
            MixedDecimalMark,
            column is null
                ? string.Create(
                    Invariant,
                    $"Line {line} has too many fields ('{text}'): a number in it seems to be written with a decimal comma, which is also the separator."
                )
                : string.Create(
                    Invariant,
                    $"Line {line}, column '{column}': '{text}' is not written with a decimal {NameOf(mark)} as the other numbers are."
                ),
            "Set one decimal mark for all columns in the machine's export and export again."
        )
        {
            Line = line,
            Column = column,
        };

    public static LogProblem OfNumber(NumberForm form, long line, string column, string text) =>
        form switch
        {
            NumberForm.Missing => At(
                MissingValue,
                line,
                column,
                "there is no value",
                "A gap is not a measurement: export without gaps, or set the column to 'not kept'."
            ),
            NumberForm.NotFinite => At(
                NotFinite,
                line,
                column,
                $"'{text}' is not a finite number",
                "The sensor gave no reading there; find out why, or set the column to 'not kept'."
            ),
            _ => At(
                LogProblemCode.NotANumber,
                line,
                column,
                $"'{text}' is not a number",
                "Correct the export, or set the column to 'not kept'."
            ),
        };

    public static LogProblem NoTimeStamp(long line, string column, string text) =>
        At(
            LogProblemCode.NotANumber,
            line,
            column,
            $"'{text}' is not a time stamp such as 2026-03-01T08:00:00.000",
            "Correct the export, or give the column the unit of its numbers instead of 'time stamp'."
        );

    public static LogProblem Time(long line, string column, double seconds, double before) =>
        seconds == before
            ? At(
                DuplicateTime,
                line,
                column,
                string.Create(
                    Invariant,
                    $"the time stamp {seconds} is the same as on the line before"
                ),
                "Check for a doubled block of rows, and export again."
            )
            : At(
                TimeBackwards,
                line,
                column,
                string.Create(Invariant, $"the time stamp goes back from {before} to {seconds}"),
                "Check that the file holds one run and that the machine's clock was not set, and export again."
            );

    private static LogProblem At(
        LogProblemCode code,
        long line,
        string column,
        string what,
        string remedy
    ) =>
        new(code, string.Create(Invariant, $"Line {line}, column '{column}': {what}."), remedy)
        {
            Line = line,
            Column = column,
        };

    private static string NameOf(char mark) => mark == ',' ? "comma" : "point";

    private static System.Globalization.CultureInfo Invariant =>
        System.Globalization.CultureInfo.InvariantCulture;
}
