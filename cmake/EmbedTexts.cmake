# Writes OUT, a C++ source with the texts of FILES as (name without ending, text) in the order given.
# Run as: cmake -DOUT=… -DFILES=a;b -P EmbedTexts.cmake
set(source "// Made by cmake/EmbedTexts.cmake from data/rules.\n#include \"book/rules_file.h\"\n\n#include <array>\n\n")
string(APPEND source "namespace piewright::book {\n\nstd::span<const ShippedRules> shippedRules() {\n")
list(LENGTH FILES count)
string(APPEND source "    static constexpr std::array<ShippedRules, ${count}> kAll{{\n")
foreach(file IN LISTS FILES)
  get_filename_component(name ${file} NAME_WE)
  file(READ ${file} text)
  string(APPEND source "        {\"${name}\", R\"TEXT(${text})TEXT\"},\n")
endforeach()
string(APPEND source "    }};\n    return kAll;\n}\n\n} // namespace piewright::book\n")
file(WRITE ${OUT} "${source}")
