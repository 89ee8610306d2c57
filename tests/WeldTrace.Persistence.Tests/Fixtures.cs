using WeldTrace.Persistence.Tests.PrivateServer;
using WeldTrace.TestSupport.Database;
using Xunit;

[assembly: AssemblyFixture(typeof(PostgresServerFixture))]
[assembly: AssemblyFixture(typeof(PreparedFolder))]
