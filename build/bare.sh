# What ./brewfloor drill bare runs, as root and in a mount namespace of its own: both commands of the README on a machine
# with Debian's smallest system and the .NET SDK, and nothing else. The lines that begin with "bare:" are what is counted.
#   bash build/bare.sh SOURCES FOLDER
set -euo pipefail
sources=$1
bare=$2
home=~root
# shellcheck source=/dev/null
release=$(. /etc/os-release && echo "$VERSION_CODENAME")

counted() { printf 'bare: %s\n' "$*"; }

# A bare machine knows nothing of this one's environment but how its packages are checked.
inside=(chroot "$bare" /usr/bin/env -i HOME="$home" LANG=C.UTF-8 PATH=/usr/local/bin:/usr/bin:/bin:/usr/sbin:/sbin
    ${NUGET_CERT_REVOCATION_MODE:+NUGET_CERT_REVOCATION_MODE="$NUGET_CERT_REVOCATION_MODE"})

make_system() {
    debootstrap --variant=minbase "$release" "$bare" >"$bare.log" 2>&1 || {
        tail -n 20 "$bare.log"
        exit 1
    }
    mount --bind /dev "$bare/dev"
    mount -t proc proc "$bare/proc"
    mount -t tmpfs -o mode=1777 tmpfs "$bare/dev/shm" # a browser's memory; a bare machine has it too
    # Where this machine gets its packages from.
    cp /etc/resolv.conf /etc/hosts "$bare/etc/"
    apt-get indextargets --format 'deb $(SITE) $(RELEASE) $(COMPONENT)' 'Origin: Debian' |
        sort -u >"$bare/etc/apt/sources.list"
}

# The folder of the SDK, and what its maker says that it needs on Debian.
add_sdk() {
    local folder
    folder=$(dirname "$(readlink -f "$(command -v dotnet)")")
    cp -a "$folder" "$bare/usr/share/dotnet"
    ln -s ../share/dotnet/dotnet "$bare/usr/bin/dotnet"
    "${inside[@]}" apt-get -qq update
    "${inside[@]}" DEBIAN_FRONTEND=noninteractive apt-get -qq install -y --no-install-recommends \
        ca-certificates libgssapi-krb5-2 '^libicu[0-9]+$' libssl3 libstdc++6 tzdata zlib1g >"$bare.log" 2>&1 || {
        tail -n 20 "$bare.log"
        exit 1
    }
    local trusted
    for trusted in /etc/ssl/certs /usr/share/ca-certificates /usr/local/share/ca-certificates; do # whom this machine trusts,
        mkdir -p "$bare$trusted"
        cp -aT "$trusted" "$bare$trusted"
    done
    if [ -f "$home/.nuget/NuGet/NuGet.Config" ]; then # and where its packages come from
        install -D -m 600 "$home/.nuget/NuGet/NuGet.Config" "$bare$home/.nuget/NuGet/NuGet.Config"
    fi
}

add_sources() {
    mkdir -p "$bare/srv/brewfloor"
    git -C "$sources" archive HEAD | tar -x -C "$bare/srv/brewfloor"
}

# The status line of an address of the app; nothing when nobody answers. A bare machine has no curl.
status_of() {
    (
        exec 3<>/dev/tcp/127.0.0.1/8080
        printf 'GET %s HTTP/1.1\r\nHost: localhost:8080\r\nConnection: close\r\n\r\n' "$1" >&3
        head -n 1 <&3
    ) 2>/dev/null || true
}

# The first command, until a browser would show its page; then it is stopped.
start() {
    local began=$SECONDS app
    "${inside[@]}" bash -c 'cd /srv/brewfloor && exec ./brewfloor start --demo' &
    app=$!
    until [[ "$(status_of /sign-in)" == *" 200 "* ]]; do
        kill -0 "$app" 2>/dev/null || {
            counted "$1 ended by itself"
            return 0
        }
        [ $((SECONDS - began)) -lt 900 ] || break
        sleep 1
    done
    counted "$1 $((SECONDS - began))"
    kill "$app" && wait "$app" || true
    [ -z "$(status_of /health/live)" ] || counted "$1 went on after it was stopped"
}

# The second, as it is written in the README.
check() {
    local began=$SECONDS code=0
    "${inside[@]}" bash -c 'cd /srv/brewfloor && ./brewfloor test' >"$bare.log" 2>&1 || code=$?
    tail -n 40 "$bare.log"
    counted "test $((SECONDS - began)) $code $(tail -n 1 "$bare.log")"
}

[ -z "$(status_of /health/live)" ] || {
    echo "Something answers on port 8080 already: stop it, then run this again."
    exit 1
}
make_system
add_sdk
add_sources
start first
start second
check
