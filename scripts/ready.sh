# Installs what is missing to build Piewright, on Debian 12 and 13 and Ubuntu 22.04 and 24.04. Sourced by ./try and ./test.
# Leaves CC and CXX set where the default compiler is too old.

build_packages=(g++ cmake ninja-build ccache pkg-config git ca-certificates
    nlohmann-json3-dev libtomlplusplus-dev libcli11-dev libhowardhinnant-date-dev
    libcairo2-dev libpango1.0-dev fonts-dejavu-core tzdata)
test_packages=(libgtest-dev libgmock-dev librapidcheck-dev poppler-utils)

# Runs a command as root: as we are, or through sudo.
as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

# install_missing PACKAGE...: nothing is asked of the network when all are there.
install_missing() {
    local package missing=()
    for package in "$@"; do
        dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
    done
    [ ${#missing[@]} = 0 ] && return 0
    echo "Installing: ${missing[*]}" >&2
    if ! command -v apt-get >/dev/null; then
        echo "This script knows Debian and Ubuntu. Elsewhere install the like of: ${missing[*]}" >&2
        return 1
    fi
    as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q >&2
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends "${missing[@]}" >&2
}

# C++20 as we use it needs g++ 12.
choose_compiler() {
    local major
    major=$(g++ -dumpversion 2>/dev/null | cut -d. -f1)
    if [ -z "${CXX:-}" ] && [ "${major:-0}" -lt 12 ]; then
        install_missing g++-12
        export CC=gcc-12 CXX=g++-12
    fi
}

# build TESTS(ON|OFF)
build() {
    cmake --preset release -DPIEWRIGHT_TESTS="$1" >&2
    cmake --build --preset release >&2
}
