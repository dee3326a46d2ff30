# The Debian packages, by CPack: swathe has the command, libswathe-dev the library.
set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_CONTACT "The Swathe project <swathe@example.org>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY ${PROJECT_DESCRIPTION})
set(CPACK_COMPONENTS_ALL command library)
set(CPACK_DEB_COMPONENT_INSTALL ON)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_CONTROL_STRICT_PERMISSION ON)

set(CPACK_DEBIAN_COMMAND_PACKAGE_NAME swathe)
set(CPACK_DEBIAN_COMMAND_PACKAGE_SECTION graphics)
set(CPACK_DEBIAN_COMMAND_PACKAGE_SHLIBDEPS ON)
set(CPACK_COMPONENT_COMMAND_DESCRIPTION
"A short text file says how big the frame is, what boards and padding are
at hand and where the bumpers come off. Swathe gives back full-size cloth
patterns with every fold, notch and staple, stencils of the team's number,
a check of the whole against the season's rules, and lists of what to saw,
cut and buy.")

set(CPACK_DEBIAN_LIBRARY_PACKAGE_NAME libswathe-dev)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_SECTION libdevel)
set(CPACK_DEBIAN_LIBRARY_PACKAGE_DEPENDS
    "libcairo2-dev, libharfbuzz-dev, libfreetype-dev, libpolyclipping-dev, zlib1g-dev, libfmt-dev, libexpected-dev")
set(CPACK_COMPONENT_LIBRARY_DESCRIPTION
"The C++ library behind the command swathe: a static library and its headers,
found by find_package(swathe) and by pkg-config.")

# What every Debian package has: whose it is, and what changed.
set(copyright ${PROJECT_BINARY_DIR}/copyright)
file(READ ${PROJECT_SOURCE_DIR}/LICENSE text)
string(REPLACE ";" "\\;" text "${text}")
file(WRITE ${copyright} "Swathe is under this license:\n\n${text}")
file(APPEND ${copyright} "\nThe fonts built into it are under these:\n")
file(GLOB fonts CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/fonts-open/*/OFL.txt)
foreach(font IN LISTS fonts)
  get_filename_component(name ${font} DIRECTORY)
  get_filename_component(name ${name} NAME)
  file(READ ${font} text)
  file(APPEND ${copyright} "\n--- ${name} ---\n\n${text}")
endforeach()
set(changelog ${PROJECT_BINARY_DIR}/changelog.gz)
add_custom_command(
  OUTPUT ${changelog}
  COMMAND ${GZIP_PROGRAM} -9nc ${CMAKE_CURRENT_LIST_DIR}/changelog > ${changelog}
  DEPENDS ${CMAKE_CURRENT_LIST_DIR}/changelog)
add_custom_target(swathe_changelog ALL DEPENDS ${changelog})
foreach(component command library)
  string(TOUPPER ${component} COMPONENT)
  install(FILES ${copyright} ${changelog}
          DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/${CPACK_DEBIAN_${COMPONENT}_PACKAGE_NAME}
          COMPONENT ${component})
endforeach()

include(CPack)
