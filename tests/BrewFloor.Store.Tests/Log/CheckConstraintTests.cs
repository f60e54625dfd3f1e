using BrewFloor.Domain.Tanks;
using BrewFloor.Store.Tests.Postgres;
using Npgsql;
using static BrewFloor.Store.Tests.Postgres.FreshFloor;

namespace BrewFloor.Store.Tests.Log;

/// <summary>Each check of the tables refuses something, and takes it when it is dropped.</summary>
public sealed class CheckConstraintTests(TestServer server) : IAsyncLifetime
{
    private const string Person =
        "INSERT INTO people (id, name, role, must_change_password, security_stamp, failed_sign_ins, is_active, preferences, created_at)";

    private readonly FreshFloor _floor = new(server);

    private static readonly Dictionary<string, string> Refused = new(StringComparer.Ordinal)
    {
        ["ck_backups_what_is_not_proven_says_why"] =
            "INSERT INTO backups (id, at, file, bytes, is_nightly) VALUES (gen_random_uuid(), now(), 'a', 1, false)",
        ["ck_backups_what_is_proven_was_made"] =
            "INSERT INTO backups (id, at, file, proven_at, is_nightly) VALUES (gen_random_uuid(), now(), 'a', now(), false)",
        ["ck_batches_number_is_given"] =
            "INSERT INTO batches (id, number, version, thing) VALUES (gen_random_uuid(), 0, 1, '{}')",
        ["ck_cultures_number_is_given"] =
            "INSERT INTO cultures (id, number, version, thing) VALUES (gen_random_uuid(), 0, 1, '{}')",
        ["ck_items_number_is_given"] =
            "INSERT INTO items (id, number, version, thing) VALUES (gen_random_uuid(), 0, 1, '{}')",
        ["ck_entries_hash_is_sha256"] = Another("entries", """{"seq": 99, "hash": "\\x00"}"""),
        ["ck_entries_note_is_short"] = Another("entries", $$"""{"seq": 99, "note": "{{new string('x', 4001)}}"}"""),
        ["ck_entries_payload_is_an_object"] = Another("entries", """{"seq": 99, "payload": []}"""),
        ["ck_entries_written_over_stops_has_reason"] = Another(
            "entries",
            """{"seq": 99, "done_anyway": ["not-clean"], "reason": null}"""
        ),
        ["ck_entry_subjects_ends_after_it_starts"] = "UPDATE entry_subjects SET until = since",
        ["ck_invites_role_is_known"] = $$"""
            WITH ann AS ({{Person}}
                VALUES (gen_random_uuid(), 'Ann', 'owner', false, gen_random_uuid(), 0, true, '{}', now()) RETURNING id)
            INSERT INTO invites (id, hash, name, role, created_by, created_at, expires_at)
            SELECT gen_random_uuid(), '', 'Bo', 'king', id, now(), now() FROM ann
            """,
        ["ck_jobs_overdue_is_not_before_due"] = "UPDATE jobs SET overdue_at = due_at - interval '1 h'",
        ["ck_jobs_put_off_has_reason"] = "UPDATE jobs SET put_off_until = now()",
        ["ck_jobs_resolved_says_how"] = "UPDATE jobs SET resolved_at = now()",
        ["ck_people_failed_sign_ins_are_counted"] =
            $"{Person} VALUES (gen_random_uuid(), 'Ann', 'owner', false, gen_random_uuid(), -1, true, '{{}}', now())",
        ["ck_people_role_is_known"] =
            $"{Person} VALUES (gen_random_uuid(), 'Ann', 'king', false, gen_random_uuid(), 0, true, '{{}}', now())",
        ["ck_security_events_kind_is_a_word"] = "INSERT INTO security_events (kind) VALUES ('')",
        ["ck_site_address_opens_in_a_browser"] = "UPDATE site SET address = 'floor.example'",
        ["ck_site_altitude_is_on_earth"] = "UPDATE site SET altitude_m = 9000",
        ["ck_site_is_one"] = "INSERT INTO site SELECT 2, name, zone, altitude_m, version FROM site",
        ["ck_spreadsheets_kind_is_known"] = ASheet("'kegs', NULL, NULL, NULL"),
        ["ck_spreadsheets_what_is_imported_says_by_whom"] = ASheet("'tanks', now(), NULL, NULL"),
        ["ck_spreadsheets_what_is_undone_was_imported"] = ASheet("'tanks', NULL, NULL, now()"),
        ["ck_tanks_code_is_typed"] =
            """UPDATE tanks SET code = 'k 3', thing = jsonb_set(thing, '{code}', '"k 3"') WHERE code = 'K3'""",
        ["ck_tanks_thing_is_the_tank"] = "UPDATE tanks SET code = 'K4' WHERE code = 'K3'",
        ["ck_tanks_working_is_something"] = "UPDATE tanks SET thing = jsonb_set(thing, '{working_l}', '0')",
        ["ck_tokens_scopes_are_known"] =
            "INSERT INTO tokens (id, name, hash, scopes, created_at) VALUES (gen_random_uuid(), 'a', '', '{all}', now())",
    };

    public static TheoryData<string> All => [.. Refused.Keys];

    public ValueTask InitializeAsync() => _floor.InitializeAsync();

    public ValueTask DisposeAsync() => _floor.DisposeAsync();

    [Theory]
    [MemberData(nameof(All))]
    public async Task A_check_refuses_what_it_is_for_and_dropped_it_would_be_taken(string name)
    {
        await FillTheFloorAsync();

        var refused = await Assert.ThrowsAsync<PostgresException>(() => _floor.AsOwnerAsync(Refused[name]));
        Assert.Equal((PostgresErrorCodes.CheckViolation, name), (refused.SqlState, refused.ConstraintName));

        await _floor.AsOwnerAsync($"ALTER TABLE {refused.TableName} DROP CONSTRAINT {name}; {Refused[name]}");
    }

    [Fact]
    public async Task No_check_is_forgotten() =>
        Assert.Equal(
            string.Join(' ', Refused.Keys.Order(StringComparer.Ordinal)),
            await _floor.AskAsync<string>(
                """
                SELECT string_agg(conname, ' ' ORDER BY conname COLLATE "C") FROM pg_constraint
                WHERE contype = 'c' AND connamespace = 'public'::regnamespace
                """
            )
        );

    private async Task FillTheFloorAsync()
    {
        var batch = NewId();
        (await _floor.InsistAsync(Ann, Fill(K3, batch, at: Ago(3)))).Stored();
        (await _floor.InsistAsync(Ann, new Emptied(K3, batch, Litres(1)) { Id = NewId(), At = Ago(2) })).Stored();
    }

    private static string ASheet(string values) =>
        $$"""
            INSERT INTO spreadsheets (id, name, uploaded_by, uploaded_at, entries, tanks, others, kind, imported_at, imported_by, undone_at)
            VALUES (gen_random_uuid(), 'a', gen_random_uuid(), now(), '{}', '{}', '{}', {{values}})
            """;

    // A copy of a row with something else in it.
    private static string Another(string table, string changes) =>
        $"""
            INSERT INTO {table} SELECT (jsonb_populate_record(r, '{changes}'::jsonb || jsonb_build_object('id', gen_random_uuid()))).*
            FROM {table} r LIMIT 1
            """;
}
