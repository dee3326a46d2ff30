# The installed library: find_package(swathe), and pkg-config swathe.
include(CMakePackageConfigHelpers)
set(SWATHE_CMAKE_DIR ${CMAKE_INSTALL_LIBDIR}/cmake/swathe)
install(TARGETS swathe EXPORT swatheTargets
        ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library
        LIBRARY DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT library
        FILE_SET HEADERS DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT library)
install(EXPORT swatheTargets NAMESPACE swathe:: DESTINATION ${SWATHE_CMAKE_DIR} COMPONENT library)
configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/swatheConfig.cmake.in
                              ${PROJECT_BINARY_DIR}/swatheConfig.cmake
                              INSTALL_DESTINATION ${SWATHE_CMAKE_DIR})
write_basic_package_version_file(${PROJECT_BINARY_DIR}/swatheConfigVersion.cmake
                                 COMPATIBILITY SameMinorVersion)
install(FILES ${PROJECT_BINARY_DIR}/swatheConfig.cmake ${PROJECT_BINARY_DIR}/swatheConfigVersion.cmake
        DESTINATION ${SWATHE_CMAKE_DIR} COMPONENT library)

# The .pc file finds its prefix from where it lies, so that the whole may be moved.
file(RELATIVE_PATH SWATHE_PC_TO_PREFIX /${CMAKE_INSTALL_LIBDIR}/pkgconfig /)
string(REGEX REPLACE "/$" "" SWATHE_PC_TO_PREFIX "${SWATHE_PC_TO_PREFIX}")
configure_file(${CMAKE_CURRENT_LIST_DIR}/swathe.pc.in ${PROJECT_BINARY_DIR}/swathe.pc @ONLY)
install(FILES ${PROJECT_BINARY_DIR}/swathe.pc DESTINATION ${CMAKE_INSTALL_LIBDIR}/pkgconfig
        COMPONENT library)
