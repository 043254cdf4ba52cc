#!/usr/bin/env bash
# Installs the library into an empty folder and builds a consumer from there: with pkg-config, shared and static, and with CMake.
set -u
here=$(cd "$(dirname "$0")" && pwd)
root=$(cd "$here/../.." && pwd)
work=$1
prefix=$work/with\ space/prefix
passed=0
failed=0
check() { local what=$1; shift; if "$@"; then passed=$((passed + 1)); else failed=$((failed + 1)); echo "FAILED: $what"; fi; }

version=$(sed -n 's/^#define SW_VERSION "\(.*\)"/\1/p' "$root/bindings-c/include/seamwright.h")
abi=$(sed -n 's/^#define SW_ABI_VERSION //p' "$root/bindings-c/include/seamwright.h")
expected="$version 990.6 mm"
rm -rf "$work"
mkdir -p "$work"

check "installs" "$root/bindings-c/install" --debug "$prefix"
refuses() { ! "$root/bindings-c/install" "$@" >/dev/null 2>&1; }
check "install refuses no prefix" refuses
check "install refuses an unknown option" refuses --fast "$prefix"
check "install refuses a relative prefix" refuses --debug relative/prefix

# DESTDIR is put before the prefix when files are copied, and is not written into them.
staged() { DESTDIR=$work/stage "$root/bindings-c/install" --debug /opt/sw && grep -qx 'prefix=/opt/sw' "$work/stage/opt/sw/lib/pkgconfig/seamwright.pc"; }
check "installs into a staging folder" staged

filled() { ! grep -rn '@[A-Z_]*@' "$prefix/lib/pkgconfig" "$prefix/lib/cmake"; }
check "no template is left unfilled" filled

if command -v pkg-config >/dev/null; then
    # A prefix without spaces: pkg-config's flags are split by the shell.
    plain=$work/prefix
    check "installs again" "$root/bindings-c/install" --debug "$plain"
    export PKG_CONFIG_PATH=$plain/lib/pkgconfig
    released() { [[ $(pkg-config --modversion seamwright) == "$version" ]]; }
    shared() {
        # shellcheck disable=SC2046
        gcc -std=c99 -Wall -Wextra -Wpedantic -Werror -o "$work/shared" "$here/consumer.c" $(pkg-config --cflags --libs seamwright) -Wl,-rpath,"$plain/lib" &&
            [[ $("$work/shared") == "$expected" ]]
    }
    by_soname() { readelf -d "$work/shared" | grep -q "NEEDED.*libseamwright\.so\.$abi\]"; }
    static() {
        local flags=()
        read -ra flags <<<"$(pkg-config --cflags --libs --static seamwright)"
        gcc -std=c99 -Wall -Wextra -Wpedantic -Werror -o "$work/static" "$here/consumer.c" "${flags[@]/-lseamwright/-l:libseamwright.a}" &&
            [[ $("$work/static") == "$expected" ]] && ! readelf -d "$work/static" | grep -q libseamwright
    }
    check "pkg-config tells the release" released
    check "a consumer builds with pkg-config" shared
    check "the consumer asks for the library by its ABI number" by_soname
    check "a consumer links the static library" static
else
    echo "skipped: no pkg-config"
fi

if command -v cmake >/dev/null; then
    mkdir -p "$work/consumer"
    cp "$here/consumer.c" "$work/consumer/"
    cat >"$work/consumer/CMakeLists.txt" <<'CMAKE'
cmake_minimum_required(VERSION 3.16)
project(consumer C)
find_package(seamwright 0.1 REQUIRED CONFIG)
add_executable(shared consumer.c)
target_link_libraries(shared PRIVATE seamwright::seamwright)
add_executable(static consumer.c)
target_link_libraries(static PRIVATE seamwright::seamwright_static)
CMAKE
    with_cmake() {
        cmake -S "$work/consumer" -B "$work/consumer/build" -DCMAKE_PREFIX_PATH="$prefix" >"$work/cmake.log" 2>&1 &&
            cmake --build "$work/consumer/build" >>"$work/cmake.log" 2>&1 || { tail -n 20 "$work/cmake.log"; return 1; }
        [[ $("$work/consumer/build/shared") == "$expected" && $("$work/consumer/build/static") == "$expected" ]]
    }
    too_new() {
        sed 's/seamwright 0\.1/seamwright 9.0/' "$work/consumer/CMakeLists.txt" >"$work/CMakeLists.txt" && mkdir -p "$work/newer" &&
            cp "$work/CMakeLists.txt" "$here/consumer.c" "$work/newer/" &&
            ! cmake -S "$work/newer" -B "$work/newer/build" -DCMAKE_PREFIX_PATH="$prefix" >/dev/null 2>&1
    }
    check "a consumer builds with CMake" with_cmake
    check "CMake refuses a release that is too old" too_new
else
    echo "skipped: no cmake, so its files are filled but not used"
fi

echo "$passed passed, $failed failed"
exit $((failed > 0))
