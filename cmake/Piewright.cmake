# What every target shares, and the two ways a target is made: a room and a test.

set(CMAKE_CXX_STANDARD 20)
set(CMAKE_CXX_STANDARD_REQUIRED ON)
set(CMAKE_CXX_EXTENSIONS OFF)

find_program(PIEWRIGHT_CCACHE ccache)
if(PIEWRIGHT_CCACHE AND NOT CMAKE_CXX_COMPILER_LAUNCHER)
  set(CMAKE_CXX_COMPILER_LAUNCHER ${PIEWRIGHT_CCACHE})
endif()

# Private to our own code: never imposed on a header we include or a program that links us.
add_library(piewright_warnings INTERFACE)
target_compile_options(piewright_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wold-style-cast
  -Wnon-virtual-dtor -Woverloaded-virtual -Wnull-dereference -Wimplicit-fallthrough
  -Werror)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # g++ 12 and 13 see dangling or uninitialised memory in std::string, std::variant and std::optional at -O2 where
  # there is none; the sanitizer presets look for the real thing.
  target_compile_options(piewright_warnings INTERFACE -Wno-maybe-uninitialized -Wno-restrict -Wno-stringop-overflow
    -Wno-array-bounds -Wno-null-dereference)
elseif(CMAKE_CXX_COMPILER_ID MATCHES "Clang")
  # std::stable_sort of libstdc++ 12 and 13 calls a function that libstdc++ itself marks deprecated.
  target_compile_options(piewright_warnings INTERFACE -Wno-deprecated-declarations)
endif()

# piewright_room(NAME USES room... LINKS target... SOURCES file... HEADERS file...)
# A room is a static library (or headers alone). USES is what its headers and sources may include.
function(piewright_room name)
  cmake_parse_arguments(ROOM "" "" "USES;LINKS;SOURCES;HEADERS" ${ARGN})
  if(ROOM_SOURCES)
    add_library(piewright_${name} STATIC)
    target_sources(piewright_${name} PRIVATE ${ROOM_SOURCES})
    set(scope PUBLIC)
    target_link_libraries(piewright_${name} PRIVATE piewright_warnings)
  else()
    add_library(piewright_${name} INTERFACE)
    set(scope INTERFACE)
  endif()
  target_include_directories(piewright_${name} ${scope} ${CMAKE_SOURCE_DIR}/src)
  foreach(room IN LISTS ROOM_USES)
    target_link_libraries(piewright_${name} ${scope} piewright_${room})
  endforeach()
  target_link_libraries(piewright_${name} ${scope} ${ROOM_LINKS})
endfunction()

# piewright_test(NAME USES room... LINKS target... SOURCES file...): one GoogleTest program, its cases seen by ctest.
function(piewright_test name)
  cmake_parse_arguments(T "" "" "USES;LINKS;SOURCES" ${ARGN})
  add_executable(test_${name} ${T_SOURCES})
  foreach(room IN LISTS T_USES)
    target_link_libraries(test_${name} PRIVATE piewright_${room})
  endforeach()
  target_link_libraries(test_${name} PRIVATE piewright_warnings GTest::gmock_main ${T_LINKS})
  target_include_directories(test_${name} PRIVATE ${CMAKE_SOURCE_DIR}/src ${CMAKE_SOURCE_DIR}/tests)
  target_compile_definitions(test_${name} PRIVATE PIEWRIGHT_SOURCE="${CMAKE_SOURCE_DIR}")
  include(GoogleTest)
  gtest_discover_tests(test_${name} TEST_PREFIX "${name}/" DISCOVERY_TIMEOUT 120 PROPERTIES TIMEOUT 300)
endfunction()
