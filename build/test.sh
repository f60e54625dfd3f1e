# What ./brewfloor test does; sourced by it, never run alone.
# The last line is the tally of all projects; whatever ends badly without a count is counted as failed.

projects=(Brewing Domain DemoSeed Store Web EndToEnd) # the quick ones first, the browser last

passed=0
failed=0
skipped=0

test_everything() {
    need_postgres
    need_browser
    need_proxy
    tools
    say "Format"
    dotnet csharpier check . || stop "Some files are not laid out: run ./brewfloor format."
    say "Build"
    # One compiler for all, whatever this machine's setting: it is warm from the second project on.
    local -x UseSharedCompilation=true
    dotnet build BrewFloor.sln -v q -nodeReuse:false || stop "The build failed; warnings are errors here."
    (published >/dev/null) # for the tests in a browser, while the compiler is warm
    dotnet build-server shutdown --vbcscompiler >/dev/null
    check_model

    local project
    for project in "${projects[@]}"; do
        run_tests "$project" --no-build # built a moment ago, by this very run
    done
    close
}

# A model that differs from the newest migration would fail only when somebody upgrades.
check_model() {
    [ -f src/BrewFloor.Store/FloorDb.cs ] || return 0
    say "Migrations"
    dotnet ef migrations has-pending-model-changes --no-build --project src/BrewFloor.Store ||
        stop "The model and its migrations differ: dotnet ef migrations add <Sentence> --project src/BrewFloor.Store"
}

# test_one PROJECT [words of a test's name]
test_one() {
    local project=$1
    shift
    case "$project" in
        Brewing | Domain) ;;
        Store | Web) need_postgres ;;
        EndToEnd)
            need_postgres
            need_browser
            need_proxy
            ;;
        *) misused "test: no such project as $project; there are ${projects[*]}." ;;
    esac

    local words=""
    if [ "$#" -gt 0 ]; then
        words=$(
            IFS=_
            echo "$*"
        )
        words=${words// /_} # names of tests are sentences with underscores
        run_tests "$project" --filter-method "*$words*"
    else
        run_tests "$project"
    fi
    close
}

# Runs one project's tests and adds its counts.
run_tests() {
    local project=$1 log code=0 good bad left_out
    shift
    log=$(mktemp)
    say "Tests: $project"
    # With pipefail the pipe's code is that of the tests, not of tee.
    dotnet test --project "tests/BrewFloor.$project.Tests" --no-progress --no-ansi "$@" 2>&1 | tee "$log" || code=$?

    good=$(count succeeded "$log")
    bad=$(count failed "$log")
    left_out=$(count skipped "$log")
    rm -f "$log"
    if [ "$((good + bad))" -eq 0 ]; then
        say "$project: no test ran."
        bad=1
    elif [ "$code" -ne 0 ] && [ "$bad" -eq 0 ]; then
        say "$project: ended with code $code."
        bad=1
    fi

    passed=$((passed + good))
    failed=$((failed + bad))
    skipped=$((skipped + left_out))
}

# The number behind a word in the summary that the test runner closes with.
count() { awk -v word="$1:" '$1 == word { n = $2 } END { print n + 0 }' "$2"; }

close() {
    echo "$passed passed, $failed failed, $skipped skipped"
    [ "$failed" -eq 0 ] && [ "$passed" -gt 0 ]
}
