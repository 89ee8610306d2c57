using WeldTrace.TestSupport.Database;

[assembly: AssemblyFixture(typeof(PostgresServerFixture))]
