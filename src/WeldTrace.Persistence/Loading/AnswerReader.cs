using System.Collections;
using System.Data.Common;

namespace WeldTrace.Persistence.Loading;

/// <summary>One part of a common answer: whoever reads it sees no other part, and leaves the rest open when it is done.</summary>
internal sealed class AnswerReader(DbDataReader answer) : DbDataReader
{
    public override int Depth => answer.Depth;

    public override int FieldCount => answer.FieldCount;

    public override bool HasRows => answer.HasRows;

    public override bool IsClosed => answer.IsClosed;

    public override int RecordsAffected => answer.RecordsAffected;

    public override object this[int ordinal] => answer[ordinal];

    public override object this[string name] => answer[name];

    public override bool Read() => answer.Read();

    public override Task<bool> ReadAsync(CancellationToken cancellationToken) =>
        answer.ReadAsync(cancellationToken);

    public override bool NextResult() => false;

    public override Task<bool> NextResultAsync(CancellationToken cancellationToken) =>
        Task.FromResult(false);

    // Disposing comes here too.
    public override void Close() { }

    public override T GetFieldValue<T>(int ordinal) => answer.GetFieldValue<T>(ordinal);

    public override bool IsDBNull(int ordinal) => answer.IsDBNull(ordinal);

    public override object GetValue(int ordinal) => answer.GetValue(ordinal);

    public override int GetValues(object[] values) => answer.GetValues(values);

    public override bool GetBoolean(int ordinal) => answer.GetBoolean(ordinal);

    public override byte GetByte(int ordinal) => answer.GetByte(ordinal);

    public override char GetChar(int ordinal) => answer.GetChar(ordinal);

    public override DateTime GetDateTime(int ordinal) => answer.GetDateTime(ordinal);

    public override decimal GetDecimal(int ordinal) => answer.GetDecimal(ordinal);

    public override double GetDouble(int ordinal) => answer.GetDouble(ordinal);

    public override float GetFloat(int ordinal) => answer.GetFloat(ordinal);

    public override Guid GetGuid(int ordinal) => answer.GetGuid(ordinal);

    public override short GetInt16(int ordinal) => answer.GetInt16(ordinal);

    public override int GetInt32(int ordinal) => answer.GetInt32(ordinal);

    public override long GetInt64(int ordinal) => answer.GetInt64(ordinal);

    public override string GetString(int ordinal) => answer.GetString(ordinal);

    public override Type GetFieldType(int ordinal) => answer.GetFieldType(ordinal);

    public override string GetName(int ordinal) => answer.GetName(ordinal);

    public override int GetOrdinal(string name) => answer.GetOrdinal(name);

    public override string GetDataTypeName(int ordinal) => answer.GetDataTypeName(ordinal);

    public override IEnumerator GetEnumerator() => answer.GetEnumerator();

    public override long GetBytes(
        int ordinal,
        long dataOffset,
        byte[]? buffer,
        int bufferOffset,
        int length
    ) => answer.GetBytes(ordinal, dataOffset, buffer, bufferOffset, length);

    public override long GetChars(
        int ordinal,
        long dataOffset,
        char[]? buffer,
        int bufferOffset,
        int length
    ) => answer.GetChars(ordinal, dataOffset, buffer, bufferOffset, length);
}
