# What another project gets: the headers under include/samebase/<room>, a static library a room, the targets samebase::<room>, and
# samebase::samebase, which is all of them. The data and the program are installed with cli.
include(CMakePackageConfigHelpers)

get_property(rooms GLOBAL PROPERTY SAMEBASE_ROOMS)
add_library(samebase_all INTERFACE)
add_library(samebase::samebase ALIAS samebase_all)
set_target_properties(samebase_all PROPERTIES EXPORT_NAME samebase)
target_link_libraries(samebase_all INTERFACE ${rooms})

set(package_folder ${CMAKE_INSTALL_LIBDIR}/cmake/samebase)
install(TARGETS samebase_all ${rooms} EXPORT samebase_targets ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR})
install(DIRECTORY ${CMAKE_CURRENT_SOURCE_DIR}/ DESTINATION ${CMAKE_INSTALL_INCLUDEDIR}/samebase FILES_MATCHING PATTERN "*.hpp")
install(EXPORT samebase_targets NAMESPACE samebase:: DESTINATION ${package_folder})

configure_package_config_file(${CMAKE_CURRENT_SOURCE_DIR}/samebaseConfig.cmake.in ${CMAKE_CURRENT_BINARY_DIR}/samebaseConfig.cmake
  INSTALL_DESTINATION ${package_folder} PATH_VARS CMAKE_INSTALL_DATADIR)
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/samebaseConfigVersion.cmake COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/samebaseConfig.cmake ${CMAKE_CURRENT_BINARY_DIR}/samebaseConfigVersion.cmake
  DESTINATION ${package_folder})
