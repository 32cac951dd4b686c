#!/usr/bin/env bash
# Cuts the faces in the given folder down to what sheets use; see README.md.
set -euo pipefail
from=$1
cd "$(dirname "$0")"
latin='U+20-7E,U+A0-17F,U+192,U+1C4-1CC,U+1E6-1E7,U+1FA-1FF,U+218-21B,U+237,U+2C6,U+2C7,U+2C9,U+2D8-2DD'
latin_more='U+1E80-1E85,U+1E9E,U+1EF2,U+1EF3'
greek_cyrillic='U+384-38A,U+38C,U+38E-3A1,U+3A3-3CE,U+400-45F,U+490-491'
punctuation='U+2010-2015,U+2018-201E,U+2020-2022,U+2026,U+2030,U+2032,U+2033,U+2039,U+203A,U+2044'
signs='U+2070-207F,U+20AC,U+20BA,U+20BD,U+2113,U+2116,U+2122,U+2126,U+2153,U+2154,U+215B-215E,U+2202,U+2206'
mathematics='U+2208,U+220F,U+2211,U+2212,U+2215,U+2219,U+221A,U+221E,U+222B,U+2248,U+2260,U+2264,U+2265,U+25CA,U+FFFD'
for weight in Regular Bold; do
    pyftsubset "$from/Roboto-$weight.ttf" --output-file="Roboto-$weight.ttf" \
        --unicodes="$latin,$latin_more,$greek_cyrillic,$punctuation,$signs,$mathematics" \
        --no-hinting --layout-features='' --drop-tables+=GSUB,GPOS,GDEF --notdef-outline \
        --name-IDs='0,1,2,3,4,5,6,13,14' --canonical-order --no-recalc-timestamp
done
