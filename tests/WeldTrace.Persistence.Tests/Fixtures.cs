using WeldTrace.TestSupport.Database;
using Xunit;

[assembly: AssemblyFixture(typeof(PostgresServerFixture))]
