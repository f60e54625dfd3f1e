using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;
using NpgsqlTypes;

#nullable disable

namespace BrewFloor.Store.Migrations
{
    /// <inheritdoc />
    public partial class TheFloor : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterDatabase().Annotation("Npgsql:PostgresExtension:btree_gist", ",,");

            migrationBuilder.CreateSequence(name: "entry_seq");

            migrationBuilder.CreateTable(
                name: "batches",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    thing = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_batches", x => x.id);
                    table.CheckConstraint("ck_batches_number_is_given", "number > 0");
                }
            );

            migrationBuilder.CreateTable(
                name: "cultures",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    thing = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_cultures", x => x.id);
                    table.CheckConstraint("ck_cultures_number_is_given", "number > 0");
                }
            );

            migrationBuilder.CreateTable(
                name: "entry_kinds",
                columns: table => new
                {
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_entry_kinds", x => new { x.kind, x.version });
                }
            );

            migrationBuilder.CreateTable(
                name: "house_rules",
                columns: table => new
                {
                    version = table.Column<int>(type: "integer", nullable: false),
                    rules = table.Column<string>(type: "jsonb", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_house_rules", x => x.version);
                }
            );

            migrationBuilder.CreateTable(
                name: "jobs",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "text", nullable: false),
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    subject_kind = table.Column<string>(type: "text", nullable: false),
                    cause = table.Column<Guid>(type: "uuid", nullable: false),
                    due_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    overdue_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    changes_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    because = table.Column<string>(type: "jsonb", nullable: false),
                    tank_id = table.Column<Guid>(type: "uuid", nullable: true),
                    taken_by = table.Column<Guid>(type: "uuid", nullable: true),
                    taken_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    put_off_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    put_off_reason = table.Column<string>(type: "text", nullable: true),
                    put_off_by = table.Column<Guid>(type: "uuid", nullable: true),
                    resolved_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    resolved = table.Column<string>(type: "text", nullable: true),
                    urgency = table.Column<string>(type: "text", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_jobs", x => x.id);
                    table.CheckConstraint("ck_jobs_overdue_is_not_before_due", "overdue_at >= due_at");
                    table.CheckConstraint(
                        "ck_jobs_put_off_has_reason",
                        "put_off_until IS NULL OR (put_off_reason IS NOT NULL AND put_off_by IS NOT NULL)"
                    );
                    table.CheckConstraint("ck_jobs_resolved_says_how", "(resolved_at IS NULL) = (resolved IS NULL)");
                }
            );

            migrationBuilder.CreateTable(
                name: "people",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    role = table.Column<string>(type: "text", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    must_change_password = table.Column<bool>(type: "boolean", nullable: false),
                    security_stamp = table.Column<Guid>(type: "uuid", nullable: false),
                    failed_sign_ins = table.Column<int>(type: "integer", nullable: false),
                    locked_until = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    is_active = table.Column<bool>(type: "boolean", nullable: false),
                    preferences = table.Column<string>(type: "jsonb", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_people", x => x.id);
                    table.CheckConstraint("ck_people_failed_sign_ins_are_counted", "failed_sign_ins >= 0");
                    table.CheckConstraint("ck_people_role_is_known", "role IN ('viewer', 'helper', 'brewer', 'owner')");
                }
            );

            migrationBuilder.CreateTable(
                name: "site",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    zone = table.Column<string>(type: "text", nullable: false),
                    altitude_m = table.Column<double>(type: "double precision", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_site", x => x.id);
                    table.CheckConstraint("ck_site_altitude_is_on_earth", "altitude_m BETWEEN -500 AND 6000");
                    table.CheckConstraint("ck_site_is_one", "id = 1");
                }
            );

            migrationBuilder.CreateTable(
                name: "snapshots",
                columns: table => new
                {
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    seq = table.Column<long>(type: "bigint", nullable: false),
                    made = table.Column<long>(type: "bigint", nullable: false),
                    fold_version = table.Column<int>(type: "integer", nullable: false),
                    entries = table.Column<int>(type: "integer", nullable: false),
                    state = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_snapshots",
                        x => new
                        {
                            x.subject_id,
                            x.at,
                            x.seq,
                        }
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "states",
                columns: table => new
                {
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    state = table.Column<string>(type: "jsonb", nullable: false),
                    fold_version = table.Column<int>(type: "integer", nullable: false),
                    entries = table.Column<int>(type: "integer", nullable: false),
                    last_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    next_edge = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_states", x => x.subject_id);
                }
            );

            migrationBuilder.CreateTable(
                name: "tanks",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    thing = table.Column<string>(type: "jsonb", nullable: false),
                    working_l = table.Column<double>(
                        type: "double precision",
                        nullable: false,
                        computedColumnSql: "(thing ->> 'working_l')::double precision",
                        stored: true
                    ),
                    is_retired = table.Column<bool>(
                        type: "boolean",
                        nullable: false,
                        computedColumnSql: "thing ? 'retired_on'",
                        stored: true
                    ),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tanks", x => x.id);
                    table.CheckConstraint("ck_tanks_code_is_typed", "code ~ '^[A-Z0-9-]{1,6}$'");
                    table.CheckConstraint(
                        "ck_tanks_thing_is_the_tank",
                        "thing ->> 'code' = code AND thing ->> 'id' = id::text"
                    );
                    table.CheckConstraint("ck_tanks_working_is_something", "working_l > 0");
                }
            );

            migrationBuilder.CreateTable(
                name: "thing_changes",
                columns: table => new
                {
                    kind = table.Column<string>(type: "text", nullable: false),
                    thing_id = table.Column<Guid>(type: "uuid", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    thing = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_thing_changes",
                        x => new
                        {
                            x.kind,
                            x.thing_id,
                            x.version,
                        }
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    seq = table.Column<long>(type: "bigint", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    recorded = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false),
                    payload = table.Column<string>(type: "jsonb", nullable: false),
                    sent_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    skew_ms = table.Column<long>(type: "bigint", nullable: true),
                    done_by = table.Column<Guid[]>(type: "uuid[]", nullable: false),
                    note = table.Column<string>(type: "text", nullable: true),
                    logged_by = table.Column<Guid>(type: "uuid", nullable: false),
                    by_token = table.Column<bool>(type: "boolean", nullable: false),
                    objections = table.Column<string>(type: "jsonb", nullable: false),
                    house_rules_version = table.Column<int>(type: "integer", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: true),
                    answered = table.Column<string[]>(type: "text[]", nullable: false),
                    already_happened = table.Column<bool>(type: "boolean", nullable: false),
                    done_anyway = table.Column<string[]>(type: "text[]", nullable: false),
                    cautions_shown = table.Column<string[]>(type: "text[]", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    hash_version = table.Column<short>(type: "smallint", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_entries", x => x.id);
                    table.CheckConstraint("ck_entries_hash_is_sha256", "length(hash) = 32");
                    table.CheckConstraint("ck_entries_note_is_short", "length(note) <= 4000");
                    table.CheckConstraint("ck_entries_payload_is_an_object", "jsonb_typeof(payload) = 'object'");
                    table.CheckConstraint(
                        "ck_entries_written_over_stops_has_reason",
                        "done_anyway = '{}' OR (reason IS NOT NULL AND already_happened)"
                    );
                    table.ForeignKey(
                        name: "fk_entries_entry_kinds_kind_version",
                        columns: x => new { x.kind, x.version },
                        principalTable: "entry_kinds",
                        principalColumns: new[] { "kind", "version" },
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "tokens",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(80)", maxLength: 80, nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    scopes = table.Column<string[]>(type: "text[]", nullable: false),
                    created_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    created_by = table.Column<Guid>(type: "uuid", nullable: true),
                    revoked_at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tokens", x => x.id);
                    table.CheckConstraint("ck_tokens_scopes_are_known", "scopes <@ ARRAY['read', 'log', 'readings']");
                    table.ForeignKey(
                        name: "fk_tokens_people_created_by",
                        column: x => x.created_by,
                        principalTable: "people",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "tank_occupancies",
                columns: table => new
                {
                    id = table
                        .Column<long>(type: "bigint", nullable: false)
                        .Annotation(
                            "Npgsql:ValueGenerationStrategy",
                            NpgsqlValueGenerationStrategy.IdentityByDefaultColumn
                        ),
                    tank_id = table.Column<Guid>(type: "uuid", nullable: false),
                    batch_id = table.Column<Guid>(type: "uuid", nullable: false),
                    during = table.Column<NpgsqlRange<DateTime>>(type: "tstzrange", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_tank_occupancies", x => x.id);
                    table.ForeignKey(
                        name: "fk_tank_occupancies_batches_batch_id",
                        column: x => x.batch_id,
                        principalTable: "batches",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                    table.ForeignKey(
                        name: "fk_tank_occupancies_tanks_tank_id",
                        column: x => x.tank_id,
                        principalTable: "tanks",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "entry_subjects",
                columns: table => new
                {
                    subject_id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false),
                    seq = table.Column<long>(type: "bigint", nullable: false),
                    since = table.Column<long>(type: "bigint", nullable: false),
                    subject_kind = table.Column<string>(type: "text", nullable: false),
                    until = table.Column<long>(type: "bigint", nullable: true),
                    entry_id = table.Column<Guid>(type: "uuid", nullable: false),
                    words_id = table.Column<Guid>(type: "uuid", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_entry_subjects",
                        x => new
                        {
                            x.subject_id,
                            x.at,
                            x.seq,
                            x.since,
                        }
                    );
                    table.CheckConstraint("ck_entry_subjects_ends_after_it_starts", "until > since");
                    table.ForeignKey(
                        name: "fk_entry_subjects_entries_entry_id",
                        column: x => x.entry_id,
                        principalTable: "entries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                    table.ForeignKey(
                        name: "fk_entry_subjects_entries_words_id",
                        column: x => x.words_id,
                        principalTable: "entries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "handed_over",
                columns: table => new
                {
                    entry_id = table.Column<Guid>(type: "uuid", nullable: false),
                    taker_id = table.Column<Guid>(type: "uuid", nullable: false),
                    giver_id = table.Column<Guid>(type: "uuid", nullable: false),
                    place = table.Column<int>(type: "integer", nullable: false),
                    since = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    until = table.Column<long>(type: "bigint", nullable: true),
                    value = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey(
                        "pk_handed_over",
                        x => new
                        {
                            x.entry_id,
                            x.taker_id,
                            x.giver_id,
                            x.kind,
                            x.since,
                        }
                    );
                    table.ForeignKey(
                        name: "fk_handed_over_entries_entry_id",
                        column: x => x.entry_id,
                        principalTable: "entries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateTable(
                name: "seen_afterwards",
                columns: table => new
                {
                    entry_id = table.Column<Guid>(type: "uuid", nullable: false),
                    code = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: false),
                    objection = table.Column<string>(type: "jsonb", nullable: false),
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_seen_afterwards", x => new { x.entry_id, x.code });
                    table.ForeignKey(
                        name: "fk_seen_afterwards_entries_entry_id",
                        column: x => x.entry_id,
                        principalTable: "entries",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict
                    );
                }
            );

            migrationBuilder.CreateIndex(name: "ix_batches_number", table: "batches", column: "number", unique: true);

            migrationBuilder.CreateIndex(name: "ix_cultures_number", table: "cultures", column: "number", unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_entries_kind_version",
                table: "entries",
                columns: new[] { "kind", "version" }
            );

            migrationBuilder.CreateIndex(
                name: "ix_entries_recorded",
                table: "entries",
                columns: new[] { "recorded", "seq" }
            );

            migrationBuilder.CreateIndex(name: "ix_entries_seq", table: "entries", column: "seq", unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_entry_subjects_entry_id",
                table: "entry_subjects",
                column: "entry_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_entry_subjects_words_id",
                table: "entry_subjects",
                column: "words_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_jobs_open",
                table: "jobs",
                column: "subject_id",
                filter: "resolved_at IS NULL"
            );

            migrationBuilder.CreateIndex(
                name: "ix_jobs_rule_subject_id_cause",
                table: "jobs",
                columns: new[] { "rule", "subject_id", "cause" },
                unique: true
            );

            migrationBuilder.CreateIndex(
                name: "ix_states_next_edge",
                table: "states",
                column: "next_edge",
                filter: "next_edge IS NOT NULL"
            );

            migrationBuilder.CreateIndex(
                name: "ix_tank_occupancies_batch_id",
                table: "tank_occupancies",
                column: "batch_id"
            );

            migrationBuilder.CreateIndex(
                name: "ix_tank_occupancies_tank_id",
                table: "tank_occupancies",
                column: "tank_id"
            );

            migrationBuilder.CreateIndex(name: "ix_tanks_code", table: "tanks", column: "code", unique: true);

            migrationBuilder.CreateIndex(name: "ix_tokens_created_by", table: "tokens", column: "created_by");

            migrationBuilder.CreateIndex(name: "ix_tokens_hash", table: "tokens", column: "hash", unique: true);

            // Fences that a model cannot say: the log is never changed, a tank holds one batch at a time, a name is one person's.
            migrationBuilder.Sql(
                """
                CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
                BEGIN
                    RAISE EXCEPTION 'The log is append-only: correct or strike with an entry.' USING ERRCODE = 'restrict_violation';
                END $$;
                CREATE TRIGGER tr_entries_stay_as_written BEFORE UPDATE OR DELETE ON entries
                    FOR EACH ROW EXECUTE FUNCTION refuse_change();
                CREATE TRIGGER tr_entries_stay BEFORE TRUNCATE ON entries
                    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

                ALTER TABLE tank_occupancies ADD CONSTRAINT ex_tank_occupancies_one_batch_at_a_time
                    EXCLUDE USING gist (tank_id WITH =, during WITH &&) DEFERRABLE INITIALLY DEFERRED;

                CREATE UNIQUE INDEX ix_people_name_without_case ON people (lower(name));
                CREATE UNIQUE INDEX ix_tokens_name_without_case ON tokens (lower(name)) WHERE revoked_at IS NULL;
                """
            );
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(name: "cultures");

            migrationBuilder.DropTable(name: "entry_subjects");

            migrationBuilder.DropTable(name: "handed_over");

            migrationBuilder.DropTable(name: "house_rules");

            migrationBuilder.DropTable(name: "jobs");

            migrationBuilder.DropTable(name: "seen_afterwards");

            migrationBuilder.DropTable(name: "site");

            migrationBuilder.DropTable(name: "snapshots");

            migrationBuilder.DropTable(name: "states");

            migrationBuilder.DropTable(name: "tank_occupancies");

            migrationBuilder.DropTable(name: "thing_changes");

            migrationBuilder.DropTable(name: "tokens");

            migrationBuilder.DropTable(name: "entries");

            migrationBuilder.DropTable(name: "batches");

            migrationBuilder.DropTable(name: "tanks");

            migrationBuilder.DropTable(name: "people");

            migrationBuilder.DropTable(name: "entry_kinds");

            migrationBuilder.DropSequence(name: "entry_seq");
        }
    }
}
