#!/usr/bin/env bash
# Builds the library and runs the C tests and the reference cases against it; an argument names another file of flattened cases.
# The last line is `N passed, N failed`; what this machine cannot do is said above it.
set -u
root=$(cd "$(dirname "$0")/../.." && pwd)
here=$root/tests/c
cases=${1:-}
[[ -z $cases ]] || cases=$(realpath "$cases")
cd "$root" || exit 2
target=${CARGO_TARGET_DIR:-$root/target}
work=$target/c-tests
passed=0
failed=0

pass() { passed=$((passed + 1)); }
fail() { failed=$((failed + 1)); echo "FAILED: $*"; }
check() { local what=$1; shift; if "$@"; then pass; else fail "$what"; fi; }

# Runs a program whose last line is `N passed, N failed ...` and adds its figures; one that dies counts as a failure.
count() {
    local what=$1 output status last
    shift
    output=$("$@" 2>&1)
    status=$?
    last=$(tail -n 1 <<<"$output")
    head -n -1 <<<"$output"
    if [[ $last =~ ^([0-9]+)\ passed,\ ([0-9]+)\ failed ]]; then
        local p=${BASH_REMATCH[1]} f=${BASH_REMATCH[2]}
        passed=$((passed + p))
        failed=$((failed + f))
        echo "$what: $last"
        if ((f == 0 && status != 0)); then fail "$what left with status $status"; fi
    else
        echo "$last"
        fail "$what left with status $status and no figures"
    fi
}

finish() {
    echo "$passed passed, $failed failed"
    exit $((failed > 0))
}

if ! cargo build --locked -q -p seamwright-c; then
    fail "the library does not build"
    finish
fi
rm -rf "$work"
mkdir -p "$work/lib" "$work/plain" "$work/sanitized"
header=$root/bindings-c/include/seamwright.h
name=libseamwright.so.$(sed -n 's/^#define SW_ABI_VERSION //p' "$header")
cp "$target/debug/libseamwright.so" "$work/lib/$name"
ln -s "$name" "$work/lib/libseamwright.so"

# The binding's own tests in Rust: the guard, the header's drift, the fixed numbers.
rust=$(cargo test --locked -q -p seamwright-c 2>&1)
status=$?
read -r p f <<<"$(awk '/^test result:/ { p += $4; f += $6 } END { print p + 0, f + 0 }' <<<"$rust")"
passed=$((passed + p))
failed=$((failed + f))
if ((status != 0)); then
    grep -v '^test result:' <<<"$rust"
    ((f > 0)) || fail "the binding's tests in Rust do not build"
else
    echo "the binding's tests in Rust: $p passed, $f failed"
fi

if [[ -z $cases && -f $root/tests/src/flatten.rs ]]; then
    cases=$work/flat.cases
    if ! cargo run --locked -q -p seamwright-tests --bin flatten-cases >"$cases"; then
        fail "the cases cannot be flattened"
        cases=
    fi
fi

warnings=(-Wall -Wextra -Wpedantic -Werror)
include=(-I "$root/bindings-c/include" -I "$here")
link=(-L "$work/lib" -lseamwright -Wl,-rpath,"$work/lib" -lm)

# The header alone, in both languages; the names that the library gives out are the header's and no others.
check "the header as C99" gcc -std=c99 "${warnings[@]}" -fsyntax-only -x c "$header"
if command -v g++ >/dev/null; then
    check "the header as C++17" g++ -std=c++17 "${warnings[@]}" -fsyntax-only -x c++ "$header"
else
    echo "skipped: no g++, so the header is not read as C++"
fi
soname() { [[ $(readelf -d "$work/lib/libseamwright.so" | sed -n 's/.*SONAME.*\[\(.*\)\]/\1/p') == "$name" ]]; }
exported() { nm -D --defined-only "$work/lib/libseamwright.so" | awk '$2 == "T" { print $3 }' | sort; }
declared() { grep -v '^ \*' "$header" | grep -o '\bsw_[a-z0-9_]*(' | tr -d '(' | sort -u; }
same_names() { diff <(exported) <(declared); }
check "the SONAME carries the ABI number" soname
check "the names given out are those of the header" same_names

sanitize=(-g -fsanitize=address,undefined -fno-sanitize-recover=undefined)
echo 'int main(void) { return 0; }' >"$work/probe.c"
if gcc "${sanitize[@]}" -o "$work/probe" "$work/probe.c" 2>/dev/null && "$work/probe" 2>/dev/null; then
    kinds=(plain sanitized)
else
    kinds=(plain)
    echo "skipped: this gcc cannot sanitize, so the programs run plain only"
fi

# A sanitized run repeats a plain one, so it counts as one check a program, not again for each of its tests.
run() {
    local kind=$1 what=$2
    shift 2
    if [[ $kind == plain ]]; then
        count "$what" "$@"
    elif output=$("$@" 2>&1); then
        pass
    else
        tail -n 40 <<<"$output"
        fail "$what, sanitized"
    fi
}

for kind in "${kinds[@]}"; do
    flags=()
    [[ $kind == plain ]] || flags=("${sanitize[@]}")
    for source in "$here"/*.c; do
        program=$(basename "$source" .c)
        [[ $program != consumer && $program != summary ]] || continue
        if ! gcc -std=c99 "${warnings[@]}" "${flags[@]}" "${include[@]}" -o "$work/$kind/$program" "$source" "${link[@]}"; then
            fail "$program.c does not compile ($kind)"
        elif [[ $program == run_cases ]]; then
            check "run_cases tells right from wrong ($kind)" "$here/check_run_cases.sh" "$work/$kind/run_cases" "$work/$kind"
            [[ -z $cases ]] || run "$kind" "cases" "$work/$kind/run_cases" "$cases"
        else
            run "$kind" "$program" "$work/$kind/$program"
        fi
    done
done
[[ -n $cases ]] || echo "skipped: no file of cases was given"

# The examples of the guide, as a reader would copy them.
documented() {
    local page=$root/docs/$1
    sed -n '/^```c$/,/^```$/p' "$page" | grep -v '^```' >"$work/example.c" &&
        gcc -std=c99 "${warnings[@]}" "${include[@]}" -o "$work/example" "$work/example.c" "${link[@]}" &&
        "$work/example" >"$work/example.txt" &&
        diff "$work/example.txt" <(sed -n '/^```text$/,/^```$/p' "$page" | grep -v '^```')
}
for page in c-conventions.md trims.md; do
    check "the example in docs/$page prints what it says" documented "$page"
done

# The example of a whole job: the demo's figures, and one refusal that says where.
summary() {
    gcc -std=c99 "${warnings[@]}" "${include[@]}" -o "$work/summary" "$here/summary.c" "${link[@]}" &&
        "$work/summary" "$root/core/examples/demo_job.json" >"$work/summary.txt" 2>/dev/null &&
        grep -Eq '^panels +[1-9][0-9]{2,}$' "$work/summary.txt" && grep -Eq "^longest panel +[0-9]+'-" "$work/summary.txt" &&
        ! "$work/summary" "$root/core/no-such-job.json" 2>/dev/null
}
summary_refuses() {
    echo '{"format": "seamwright-job", "version": 1, "colour": "red"}' >"$work/colour.json"
    ! "$work/summary" "$work/colour.json" >"$work/refusal.txt" 2>&1 && grep -q '^job\.colour: ' "$work/refusal.txt"
}
check "the example program prints the demo job's figures" summary
check "the example program says where a job is refused" summary_refuses

count "install" "$here/check_install.sh" "$work/install"
finish
