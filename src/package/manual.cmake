# The man page and the shells' completions, made from the command line's own description, and the
# schema of a job, made from that of its keys.
file(GLOB SWATHE_MANUAL_SOURCES CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/src/app/manual/*.cpp)
add_executable(swathe_manual ${SWATHE_MANUAL_SOURCES})
target_compile_definitions(swathe_manual PRIVATE SWATHE_VERSION="${PROJECT_VERSION}"
                                                 SWATHE_DESCRIPTION="${PROJECT_DESCRIPTION}")
target_link_libraries(swathe_manual PRIVATE swathe_app_parts swathe_flags fmt::fmt)

find_program(GZIP_PROGRAM gzip REQUIRED)
set(manual ${PROJECT_BINARY_DIR}/manual)
add_custom_command(
  OUTPUT ${manual}/swathe.1.gz
  COMMAND swathe_manual ${manual}
  COMMAND ${GZIP_PROGRAM} -9nfk ${manual}/swathe.1
  DEPENDS swathe_manual
  COMMENT "Writing the man page, the completions and the schema of a job")
add_custom_target(swathe_pages ALL DEPENDS ${manual}/swathe.1.gz)

install(FILES ${manual}/swathe.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1 COMPONENT command)
install(FILES ${manual}/job.schema.json DESTINATION ${CMAKE_INSTALL_DATADIR}/swathe COMPONENT command)
install(FILES ${manual}/bash/swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions
        COMPONENT command)
# Debian's zsh looks into site-functions below /usr/local alone.
set(zsh_folder site-functions)
if(CMAKE_INSTALL_PREFIX STREQUAL "/usr" AND EXISTS /etc/debian_version)
  set(zsh_folder vendor-completions)
endif()
install(FILES ${manual}/zsh/_swathe DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/${zsh_folder}
        COMPONENT command)
install(FILES ${manual}/fish/swathe.fish
        DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d COMPONENT command)
