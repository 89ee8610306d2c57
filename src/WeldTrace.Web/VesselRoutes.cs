namespace WeldTrace.Web;

// The addresses of one vessel, its steps and its papers.
public static partial class Routes
{
    public static string Vessel(string serial) => $"/vessels/{Uri.EscapeDataString(serial)}";

    public static string Step(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/steps/{sequence}");

    public static string WeldStep(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/weld/{sequence}");

    public static string WeldRepair(string serial, int finding) =>
        FormattableString.Invariant($"{Vessel(serial)}/repair/{finding}");

    public static string AskConcession(string serial, int sequence, string ruleId) =>
        $"{WeldStep(serial, sequence)}/concession/{ruleId}";

    public static string Concession(Guid id) => $"{Concessions}/{id:D}";

    public static string LeakStep(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/leak/{sequence}");

    public static string PressureStep(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/pressure/{sequence}");

    public static string SectionStep(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/section/{sequence}");

    public static string SignOffStep(string serial, int sequence) =>
        FormattableString.Invariant($"{Vessel(serial)}/sign-off/{sequence}");

    public static string Traveler(string serial) => $"{Vessel(serial)}/traveler.pdf";

    public static string InspectionCertificate(string serial) =>
        $"{Vessel(serial)}/certificate.pdf";

    public static string Book(string serial) => $"{Vessel(serial)}/history.pdf";

    public static string Genealogy(string serial) => $"{Vessel(serial)}/genealogy";

    public static string Compliance(string serial) => $"{Vessel(serial)}/compliance";

    public static string ComplianceCsv(string serial) => $"{Vessel(serial)}/compliance.csv";

    public static string Bundle(string serial) => $"{Vessel(serial)}/history.zip";

    public static string ArchiveVessel(string serial) => $"{Vessel(serial)}/archive";

    public static string ArchivedBundle(Guid id) => $"{Archive}/{id:D}/history.zip";

    /// <summary>The page on which the histories of a production lot are ordered.</summary>
    public static string OrderLot(Guid lot) => $"{OrderHistories}?production-lot={lot:D}";

    public static string HistoryOrder(Guid id) => $"{Histories}/{id:D}";

    public static string HistoryState(Guid id) => $"{HistoryOrder(id)}/state";

    public static string HistoryFile(Guid id) => $"{HistoryOrder(id)}/histories.zip";

    public static string PrepareJoint(string serial, string jointCode) =>
        $"{Vessel(serial)}/prepare/{Uri.EscapeDataString(jointCode)}";

    public static string ShipVessel(string serial) => $"{Vessel(serial)}/ship";

    public static string ReportFinding(string serial) => $"{Vessel(serial)}/findings/new";
}
