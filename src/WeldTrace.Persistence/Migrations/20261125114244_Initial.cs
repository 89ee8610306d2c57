using System;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace WeldTrace.Persistence.Migrations
{
    /// <inheritdoc />
    [DbContext(typeof(WeldTraceDbContext))]
    [Migration("20261125114244_Initial")]
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "accounts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    must_change_password = table.Column<bool>(type: "boolean", nullable: false),
                    user_name = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    normalized_user_name = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    email = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    normalized_email = table.Column<string>(
                        type: "character varying(256)",
                        maxLength: 256,
                        nullable: true
                    ),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "text", nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_accounts", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "attachments",
                columns: table => new
                {
                    sha256 = table.Column<string>(
                        type: "character(64)",
                        fixedLength: true,
                        maxLength: 64,
                        nullable: false
                    ),
                    media_type = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    length = table.Column<long>(type: "bigint", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attachments", x => x.sha256);
                }
            );

            migrationBuilder.CreateTable(
                name: "findings",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    origin = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    evidence_kind = table.Column<string>(type: "text", nullable: true),
                    evidence_id = table.Column<Guid>(type: "uuid", nullable: true),
                    description = table.Column<string>(
                        type: "character varying(1000)",
                        maxLength: 1000,
                        nullable: false
                    ),
                    place = table.Column<string>(type: "jsonb", nullable: true),
                    opened_by = table.Column<string>(type: "text", nullable: false),
                    opened_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    disposition = table.Column<string>(type: "jsonb", nullable: true),
                    verification = table.Column<string>(type: "jsonb", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_findings", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "leak_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    method = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    decay = table.Column<string>(type: "jsonb", nullable: true),
                    bubble = table.Column<string>(type: "jsonb", nullable: true),
                    result = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    inspector_id = table.Column<Guid>(type: "uuid", nullable: false),
                    inspector_name = table.Column<string>(type: "text", nullable: false),
                    tested_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    verdict = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: true
                    ),
                    verdict_sentence = table.Column<string>(type: "text", nullable: false),
                    remark = table.Column<string>(
                        type: "character varying(400)",
                        maxLength: 400,
                        nullable: true
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    withdrawal = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_leak_tests", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "ledger_entries",
                columns: table => new
                {
                    number = table.Column<long>(type: "bigint", nullable: false),
                    record_kind = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    record_id = table.Column<Guid>(type: "uuid", nullable: false),
                    record_version = table.Column<int>(type: "integer", nullable: false),
                    vessels = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    entry = table.Column<string>(type: "text", nullable: false),
                    leaf_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ledger_entries", x => x.number);
                }
            );

            migrationBuilder.CreateTable(
                name: "ledger_head",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    frontier = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ledger_head", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "ledger_nodes",
                columns: table => new
                {
                    level = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<long>(type: "bigint", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_ledger_nodes", x => new { x.level, x.position });
                }
            );

            migrationBuilder.CreateTable(
                name: "machines",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    description = table.Column<string>(type: "text", nullable: false),
                    control_mode = table.Column<string>(type: "text", nullable: false),
                    log_columns = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_machines", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "material_lots",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    alloy = table.Column<string>(type: "text", nullable: false),
                    temper = table.Column<string>(type: "text", nullable: false),
                    cast_number = table.Column<string>(type: "text", nullable: false),
                    form = table.Column<string>(type: "text", nullable: false),
                    certificate_number = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_material_lots", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    printed_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    sign_in_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    roles = table.Column<string>(type: "jsonb", nullable: false),
                    is_active = table.Column<bool>(type: "boolean", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "pressure_tests",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    medium = table.Column<string>(type: "text", nullable: false),
                    set_up = table.Column<string>(type: "jsonb", nullable: false),
                    stages = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    inspector_id = table.Column<Guid>(type: "uuid", nullable: false),
                    inspector_name = table.Column<string>(type: "text", nullable: false),
                    tested_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    verdict = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: true
                    ),
                    verdict_sentence = table.Column<string>(type: "text", nullable: false),
                    remark = table.Column<string>(
                        type: "character varying(400)",
                        maxLength: 400,
                        nullable: true
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    withdrawal = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pressure_tests", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "procedure_revisions",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(30)",
                        maxLength: 30,
                        nullable: false
                    ),
                    revision_index = table.Column<int>(type: "integer", nullable: false),
                    title = table.Column<string>(
                        type: "character varying(200)",
                        maxLength: 200,
                        nullable: false
                    ),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    content = table.Column<string>(type: "jsonb", nullable: false),
                    author_id = table.Column<Guid>(type: "uuid", nullable: false),
                    author_name = table.Column<string>(type: "text", nullable: false),
                    based_on_id = table.Column<Guid>(type: "uuid", nullable: true),
                    change_reason = table.Column<string>(
                        type: "character varying(200)",
                        maxLength: 200,
                        nullable: false
                    ),
                    superseded_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_procedure_revisions", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "process_log_chunks",
                columns: table => new
                {
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    ordinal = table.Column<int>(type: "integer", nullable: false),
                    position = table.Column<int>(type: "integer", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    minimum = table.Column<double>(type: "double precision", nullable: false),
                    maximum = table.Column<double>(type: "double precision", nullable: false),
                    sum = table.Column<double>(type: "double precision", nullable: false),
                    codec = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_process_log_chunks",
                        x => new
                        {
                            x.run_id,
                            x.ordinal,
                            x.position,
                        }
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "process_log_levels",
                columns: table => new
                {
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    ordinal = table.Column<int>(type: "integer", nullable: false),
                    samples_per_bucket = table.Column<int>(type: "integer", nullable: false),
                    count = table.Column<int>(type: "integer", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_process_log_levels",
                        x => new
                        {
                            x.run_id,
                            x.ordinal,
                            x.samples_per_bucket,
                        }
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "process_logs",
                columns: table => new
                {
                    run_id = table.Column<Guid>(type: "uuid", nullable: false),
                    header = table.Column<string>(type: "jsonb", nullable: false),
                    original_attachment = table.Column<string>(
                        type: "character(64)",
                        fixedLength: true,
                        maxLength: 64,
                        nullable: true
                    ),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_process_logs", x => x.run_id);
                }
            );

            migrationBuilder.CreateTable(
                name: "sections",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    cut = table.Column<string>(type: "jsonb", nullable: false),
                    measurement = table.Column<string>(type: "jsonb", nullable: false),
                    photograph = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    inspector_id = table.Column<Guid>(type: "uuid", nullable: false),
                    inspector_name = table.Column<string>(type: "text", nullable: false),
                    tested_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    verdict = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: true
                    ),
                    verdict_sentence = table.Column<string>(type: "text", nullable: false),
                    remark = table.Column<string>(
                        type: "character varying(400)",
                        maxLength: 400,
                        nullable: true
                    ),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    withdrawal = table.Column<string>(type: "jsonb", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sections", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "signatures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    signed_kind = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    signed_id = table.Column<Guid>(type: "uuid", nullable: false),
                    signed_version = table.Column<int>(type: "integer", nullable: false),
                    signed_sha256 = table.Column<string>(
                        type: "character(64)",
                        fixedLength: true,
                        maxLength: 64,
                        nullable: false
                    ),
                    vessels = table.Column<string>(type: "jsonb", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    printed_name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    meaning = table.Column<string>(
                        type: "character varying(200)",
                        maxLength: 200,
                        nullable: false
                    ),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_signatures", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "sites",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    time_zone_id = table.Column<string>(
                        type: "character varying(60)",
                        maxLength: 60,
                        nullable: false
                    ),
                    units = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    is_demonstration = table.Column<bool>(type: "boolean", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sites", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "step_sign_offs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    step_kind = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    title = table.Column<string>(type: "text", nullable: false),
                    statement = table.Column<string>(type: "text", nullable: false),
                    remark = table.Column<string>(
                        type: "character varying(400)",
                        maxLength: 400,
                        nullable: true
                    ),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    printed_name = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_step_sign_offs", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "tool_designs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(80)",
                        maxLength: 80,
                        nullable: false
                    ),
                    revision_index = table.Column<int>(type: "integer", nullable: false),
                    geometry = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tool_designs", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "tools",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    mark = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    design_id = table.Column<Guid>(type: "uuid", nullable: false),
                    design_label = table.Column<string>(type: "text", nullable: false),
                    life_limit_m = table.Column<double>(type: "double precision", nullable: false),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    retirement = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: true
                    ),
                    uses = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tools", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "vessel_designs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<string>(
                        type: "character varying(30)",
                        maxLength: 30,
                        nullable: false
                    ),
                    revision_index = table.Column<int>(type: "integer", nullable: false),
                    title = table.Column<string>(
                        type: "character varying(200)",
                        maxLength: 200,
                        nullable: false
                    ),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    content = table.Column<string>(type: "jsonb", nullable: false),
                    author_id = table.Column<Guid>(type: "uuid", nullable: false),
                    author_name = table.Column<string>(type: "text", nullable: false),
                    superseded_by_id = table.Column<Guid>(type: "uuid", nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vessel_designs", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "vessels",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    serial = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    design_id = table.Column<Guid>(type: "uuid", nullable: false),
                    design_label = table.Column<string>(type: "text", nullable: false),
                    production_lot = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    steps = table.Column<string>(type: "jsonb", nullable: false),
                    components = table.Column<string>(type: "jsonb", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_vessels", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "weld_runs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_id = table.Column<Guid>(type: "uuid", nullable: false),
                    vessel_serial = table.Column<string>(type: "text", nullable: false),
                    step_sequence = table.Column<int>(type: "integer", nullable: false),
                    joint_code = table.Column<string>(type: "text", nullable: false),
                    pass_number = table.Column<int>(type: "integer", nullable: false),
                    travel = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    planned_path_m = table.Column<double>(
                        type: "double precision",
                        nullable: false
                    ),
                    track_radius_m = table.Column<double>(
                        type: "double precision",
                        nullable: false
                    ),
                    procedure_revision_id = table.Column<Guid>(type: "uuid", nullable: false),
                    procedure_label = table.Column<string>(type: "text", nullable: false),
                    machine_id = table.Column<Guid>(type: "uuid", nullable: false),
                    machine_name = table.Column<string>(type: "text", nullable: false),
                    tool_id = table.Column<Guid>(type: "uuid", nullable: false),
                    tool_mark = table.Column<string>(type: "text", nullable: false),
                    operator_id = table.Column<Guid>(type: "uuid", nullable: false),
                    operator_name = table.Column<string>(type: "text", nullable: false),
                    gate = table.Column<string>(type: "jsonb", nullable: false),
                    state = table.Column<string>(
                        type: "character varying(40)",
                        maxLength: 40,
                        nullable: false
                    ),
                    started_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: false
                    ),
                    ended_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    end_note = table.Column<string>(type: "text", nullable: true),
                    travelled_m = table.Column<double>(type: "double precision", nullable: true),
                    log = table.Column<string>(type: "jsonb", nullable: true),
                    signed_at = table.Column<DateTimeOffset>(
                        type: "timestamp with time zone",
                        nullable: true
                    ),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_weld_runs", x => x.id);
                }
            );

            migrationBuilder.CreateTable(
                name: "account_claims",
                columns: table => new
                {
                    id = table
                        .Column<int>(type: "integer", nullable: false)
                        .Annotation(
                            "Npgsql:ValueGenerationStrategy",
                            NpgsqlValueGenerationStrategy.IdentityByDefaultColumn
                        ),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_account_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_account_claims_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "account_logins",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    provider_key = table.Column<string>(type: "text", nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_account_logins",
                        x => new { x.login_provider, x.provider_key }
                    );
                    table.ForeignKey(
                        name: "fk_account_logins_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "account_tokens",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_account_tokens",
                        x => new
                        {
                            x.user_id,
                            x.login_provider,
                            x.name,
                        }
                    );
                    table.ForeignKey(
                        name: "fk_account_tokens_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "accounts",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade
                    );
                }
            );

            migrationBuilder.CreateIndex(
                name: "ix_account_claims_user_id",
                table: "account_claims",
                column: "user_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_account_logins_user_id",
                table: "account_logins",
                column: "user_id"
            );

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                table: "accounts",
                column: "normalized_email"
            );

            migrationBuilder.CreateIndex(
                name: "ix_accounts_person_id",
                table: "accounts",
                column: "person_id",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                table: "accounts",
                column: "normalized_user_name",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_findings_number",
                table: "findings",
                column: "number",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_findings_vessel_id",
                table: "findings",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_leak_tests_one_unsigned",
                table: "leak_tests",
                columns: new[] { "vessel_id", "step_sequence" },
                unique: true,
                filter: "signed_at IS NULL AND withdrawal IS NULL"
            );

            migrationBuilder.CreateIndex(
                name: "ix_leak_tests_vessel_id",
                table: "leak_tests",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_ledger_entries_record_id_record_version",
                table: "ledger_entries",
                columns: new[] { "record_id", "record_version" },
                unique: true
            );

            migrationBuilder
                .CreateIndex(
                    name: "ix_ledger_entries_vessels",
                    table: "ledger_entries",
                    column: "vessels"
                )
                .Annotation("Npgsql:IndexMethod", "gin");

            migrationBuilder.CreateIndex(
                name: "ix_machines_name",
                table: "machines",
                column: "name",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_material_lots_number",
                table: "material_lots",
                column: "number",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_people_sign_in_name",
                table: "people",
                column: "sign_in_name",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_pressure_tests_one_unsigned",
                table: "pressure_tests",
                columns: new[] { "vessel_id", "step_sequence" },
                unique: true,
                filter: "signed_at IS NULL AND withdrawal IS NULL"
            );

            migrationBuilder.CreateIndex(
                name: "ix_pressure_tests_vessel_id",
                table: "pressure_tests",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_procedure_revisions_number_revision_index",
                table: "procedure_revisions",
                columns: new[] { "number", "revision_index" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_procedure_revisions_one_released",
                table: "procedure_revisions",
                column: "number",
                unique: true,
                filter: "state = 'Released'"
            );

            migrationBuilder.CreateIndex(
                name: "ix_sections_one_unsigned",
                table: "sections",
                columns: new[] { "vessel_id", "step_sequence" },
                unique: true,
                filter: "signed_at IS NULL AND withdrawal IS NULL"
            );

            migrationBuilder.CreateIndex(
                name: "ix_sections_vessel_id",
                table: "sections",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_signatures_signed_id",
                table: "signatures",
                column: "signed_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_step_sign_offs_vessel_id",
                table: "step_sign_offs",
                column: "vessel_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_tool_designs_number_revision_index",
                table: "tool_designs",
                columns: new[] { "number", "revision_index" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_tools_design_id",
                table: "tools",
                column: "design_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_tools_mark",
                table: "tools",
                column: "mark",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessel_designs_number_revision_index",
                table: "vessel_designs",
                columns: new[] { "number", "revision_index" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessels_design_id",
                table: "vessels",
                column: "design_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessels_production_lot",
                table: "vessels",
                column: "production_lot"
            );

            migrationBuilder.CreateIndex(
                name: "ix_vessels_serial",
                table: "vessels",
                column: "serial",
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_weld_runs_procedure_revision_id_vessel_id",
                table: "weld_runs",
                columns: new[] { "procedure_revision_id", "vessel_id" }
            );

            migrationBuilder.CreateIndex(
                name: "ix_weld_runs_tool_id_vessel_id",
                table: "weld_runs",
                columns: new[] { "tool_id", "vessel_id" }
            );

            migrationBuilder.CreateIndex(
                name: "ix_weld_runs_vessel_id",
                table: "weld_runs",
                column: "vessel_id"
            );
            migrationBuilder.Sql(SealedRecords.Up);
            migrationBuilder.Sql(LedgerStore.LedgerHead.FirstRow);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "account_claims");

            migrationBuilder.DropTable(name: "account_logins");

            migrationBuilder.DropTable(name: "account_tokens");

            migrationBuilder.DropTable(name: "attachments");

            migrationBuilder.DropTable(name: "findings");

            migrationBuilder.DropTable(name: "leak_tests");

            migrationBuilder.DropTable(name: "ledger_entries");

            migrationBuilder.DropTable(name: "ledger_head");

            migrationBuilder.DropTable(name: "ledger_nodes");

            migrationBuilder.DropTable(name: "machines");

            migrationBuilder.DropTable(name: "material_lots");

            migrationBuilder.DropTable(name: "people");

            migrationBuilder.DropTable(name: "pressure_tests");

            migrationBuilder.DropTable(name: "procedure_revisions");

            migrationBuilder.DropTable(name: "process_log_chunks");

            migrationBuilder.DropTable(name: "process_log_levels");

            migrationBuilder.DropTable(name: "process_logs");

            migrationBuilder.DropTable(name: "sections");

            migrationBuilder.DropTable(name: "signatures");

            migrationBuilder.DropTable(name: "sites");

            migrationBuilder.DropTable(name: "step_sign_offs");

            migrationBuilder.DropTable(name: "tool_designs");

            migrationBuilder.DropTable(name: "tools");

            migrationBuilder.DropTable(name: "vessel_designs");

            migrationBuilder.DropTable(name: "vessels");

            migrationBuilder.DropTable(name: "weld_runs");

            migrationBuilder.DropTable(name: "accounts");
        }
    }
}
